package org.demebook.wall;

import io.agroal.api.AgroalPoolInterceptor;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Collections;
import java.util.Map;
import java.util.WeakHashMap;
import org.postgresql.PGConnection;

/** Says on every connection that leaves the pool for whom it speaks, unless it says so already. */
@Singleton
class EveryConnection implements AgroalPoolInterceptor {
    /** By the driver's own connection: the pool hands it in within another wrapper each time. */
    private final Map<PGConnection, String> said = Collections.synchronizedMap(new WeakHashMap<>());

    @Inject
    Seals seals;

    @Override
    public void onConnectionAcquire(Connection connection) {
        var speaker = seals.of(Speaker.present());
        try {
            var physical = connection.unwrap(PGConnection.class);
            if (speaker.equals(said.get(physical))) {
                return;
            }
            said.remove(physical);
            Wall.say(connection, speaker);
            if (connection.getAutoCommit()) { // within a transaction a rollback would take it back
                said.put(physical, speaker);
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
