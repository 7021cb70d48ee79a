package org.demebook.journal;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** Words of a keeper that an entry holds the digest of. The salt keeps short words from being guessed by it. */
@Entity
@Immutable
@Table(name = "journal_words")
@IdClass(KeptWords.Key.class)
class KeptWords extends PanacheEntityBase {
    record Key(UUID populationId, String digest) {}

    private static final int SALT_BYTES = 16;
    private static final SecureRandom RANDOM = new SecureRandom();

    @Id
    UUID populationId;

    @Id
    String digest;

    long seq;
    byte[] salt;
    String words;

    protected KeptWords() {}

    KeptWords(Entry entry, String words) {
        this.populationId = entry.populationId();
        this.seq = entry.seq();
        this.salt = new byte[SALT_BYTES];
        RANDOM.nextBytes(salt);
        this.words = words;
        this.digest = digest(salt, words);
    }

    static @Nullable String find(UUID populationId, String digest) {
        KeptWords kept = findById(new Key(populationId, digest));
        return kept == null ? null : kept.words;
    }

    private static final String OF_ACTOR =
            "populationId = ?1 and seq in (select e.seq from JournalEntry e where e.populationId = ?1 and e.actorId ="
                    + " ?2)";

    static List<KeptWords> of(UUID populationId, UUID actorId) {
        return list(OF_ACTOR, populationId, actorId);
    }

    static long countOf(UUID populationId, UUID actorId) {
        return count(OF_ACTOR, populationId, actorId);
    }

    static boolean saidByOthers(UUID populationId, UUID actorId, String words) {
        return count(
                        "populationId = ?1 and words = ?3 and seq not in"
                                + " (select e.seq from JournalEntry e where e.populationId = ?1 and e.actorId = ?2)",
                        populationId,
                        actorId,
                        words)
                > 0;
    }

    static String digest(byte[] salt, String words) {
        try {
            var sha256 = MessageDigest.getInstance("SHA-256");
            sha256.update(salt);
            sha256.update(words.getBytes(StandardCharsets.UTF_8));
            return Base64.getUrlEncoder().withoutPadding().encodeToString(sha256.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
