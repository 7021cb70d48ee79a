package org.demebook.wall;

import io.quarkus.arc.Arc;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Status;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.UUID;
import java.util.concurrent.Callable;
import javax.sql.DataSource;

/**
 * For whom the database is asked.
 *
 * <p>A connection speaks for the keeper who sends the request: rows of others that were not opened to them are not there. Who changes
 * a population speaks for the register, since its checks have to see all of it, and so does who computes: that is said here, and
 * nowhere else can it be said.
 */
@ApplicationScoped
public class Wall {
    private static final String OPENED = "org.demebook.wall.opened";

    /** As the database knows it; a role of its own, so that its statements are not planned with the policies of askers. */
    private static final String REGISTER = "demebook_register";

    private static final String OWN_ROLE = "none";

    @Inject
    DataSource database;

    @Inject
    TransactionSynchronizationRegistry transaction;

    @Inject
    Seals seals;

    /** From here on the request speaks for this keeper. Before, and where nobody is signed in, it speaks for nobody. */
    public void asks(UUID keeperId) {
        if (!Arc.container().requestContext().isActive() || Speaker.present().equals(keeperId)) {
            return;
        }
        Arc.container().instance(Speaker.class).get().is(keeperId);
        if (transaction.getTransactionKey() != null && !isOpen()) {
            sayForTransaction(OWN_ROLE, seals.of(keeperId));
        }
    }

    /** For the rest of the transaction the whole register is there: of whoever holds the population to change it. */
    public void openForWriting() {
        requireTransaction();
        if (!isOpen()) {
            open();
        }
    }

    /** Reads with the whole register there ({@link WholeRegister}). In a transaction; costs two short statements. */
    <T> T whole(Callable<T> reading) throws Exception {
        requireTransaction();
        if (isOpen()) {
            return reading.call();
        }
        open();
        try {
            return reading.call();
        } finally {
            transaction.putResource(OPENED, null);
            if (transaction.getTransactionStatus() == Status.STATUS_ACTIVE) {
                sayForTransaction(OWN_ROLE, seals.of(Speaker.present()));
            }
        }
    }

    private boolean isOpen() {
        return transaction.getResource(OPENED) != null;
    }

    private void open() {
        sayForTransaction(REGISTER, seals.register());
        transaction.putResource(OPENED, true);
    }

    private void requireTransaction() {
        if (transaction.getTransactionKey() == null) {
            throw new IllegalStateException("outside a transaction nobody knows which connection comes next");
        }
    }

    private void sayForTransaction(String role, String sealed) {
        try (var connection = database.getConnection()) {
            execute(connection, "set local role %s; set local demebook.asking = '%s'".formatted(role, sealed));
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Whom a connection speaks for until it is said anew. */
    static void say(Connection connection, String sealed) throws SQLException {
        execute(connection, "set demebook.asking = '%s'".formatted(sealed));
    }

    /** By SET, which is no query: the first query of a transaction fixes its isolation level. */
    private static void execute(Connection connection, String set) throws SQLException {
        try (var statement = connection.createStatement()) {
            statement.execute(set);
        }
    }
}
