package org.demebook.wall;

import io.agroal.api.AgroalPoolInterceptor;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Collections;
import java.util.Map;
import java.util.WeakHashMap;

/** Says on every connection that leaves the pool for whom it speaks, unless it says so already. */
@Singleton
class EveryConnection implements AgroalPoolInterceptor {
    private final Map<Connection, String> said = Collections.synchronizedMap(new WeakHashMap<>());

    @Inject
    Seals seals;

    @Override
    public void onConnectionAcquire(Connection connection) {
        var speaker = seals.of(Speaker.present());
        if (speaker.equals(said.get(connection))) {
            return;
        }
        try {
            Wall.say(connection, speaker);
            if (connection.getAutoCommit()) {
                said.put(connection, speaker);
            } else {
                said.remove(connection); // a rollback would take it back
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
