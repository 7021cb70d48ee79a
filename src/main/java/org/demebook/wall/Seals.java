package org.demebook.wall;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.SQLException;
import java.util.HexFormat;
import java.util.UUID;
import org.flywaydb.core.Flyway;
import org.jspecify.annotations.Nullable;

/**
 * Who speaks, with a seal that only the server can put on it: {@code who:sha256(key ‖ sha256(key ‖ who))}. Whoever has nothing but the
 * application's role can say no other name than the one that the connection was given with. The key is made by the migration in a
 * table that the role cannot read, and is read here as the schema's owner.
 */
@ApplicationScoped
class Seals {
    static final UUID NOBODY = new UUID(0, 0);
    private static final String REGISTER = "register";
    private static final int MOST_KEPT = 10_000;

    private final Cache<UUID, String> sealed =
            Caffeine.newBuilder().maximumSize(MOST_KEPT).build();

    @Inject
    Flyway flyway;

    private volatile byte @Nullable [] key;
    private volatile @Nullable String register;

    String register() {
        var kept = register;
        if (kept == null) {
            kept = seal(REGISTER);
            register = kept;
        }
        return kept;
    }

    String of(UUID keeperId) {
        return sealed.get(keeperId, id -> seal(id.toString()));
    }

    private String seal(String who) {
        return who + ":" + HexFormat.of().formatHex(digest(digest(who.getBytes(StandardCharsets.UTF_8))));
    }

    private byte[] digest(byte[] what) {
        try {
            var digest = MessageDigest.getInstance("SHA-256");
            digest.update(key());
            return digest.digest(what);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private byte[] key() {
        var known = key;
        if (known == null) {
            try (var connection = flyway.getConfiguration().getDataSource().getConnection();
                    var query = connection.prepareStatement("select key from demebook.wall_key");
                    var row = query.executeQuery()) {
                if (!row.next()) {
                    throw new IllegalStateException(
                            "demebook.wall_key is empty: restore it with the rest of the database");
                }
                known = row.getBytes(1);
                key = known;
            } catch (SQLException e) {
                throw new IllegalStateException("the role that owns the schema could not read demebook.wall_key", e);
            }
        }
        return known;
    }
}
