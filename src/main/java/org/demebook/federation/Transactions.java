package org.demebook.federation;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Status;
import jakarta.transaction.Synchronization;
import jakarta.transaction.TransactionSynchronizationRegistry;
import jakarta.transaction.Transactional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.demebook.wall.WholeRegister;

/** The database transaction that the work stands in. */
@ApplicationScoped
class Transactions {
    @Inject
    TransactionSynchronizationRegistry registry;

    boolean isOpen() {
        return registry.getTransactionKey() != null;
    }

    /** Something that is equal within one transaction. */
    Object key() {
        return registry.getTransactionKey();
    }

    /** In the present one, or else in a new one. */
    <T> T inOne(Supplier<T> work) {
        return isOpen() ? work.get() : QuarkusTransaction.requiringNew().call(work::get);
    }

    /** The same, with the whole register there to be read. */
    @Transactional
    @WholeRegister
    <T> T reading(Supplier<T> work) {
        return work.get();
    }

    /** Has it told whether the present transaction holds, once that is settled. */
    void atEnd(Consumer<Boolean> told) {
        registry.registerInterposedSynchronization(new Synchronization() {
            @Override
            public void beforeCompletion() {
                // nothing is left to do
            }

            @Override
            public void afterCompletion(int status) {
                told.accept(status == Status.STATUS_COMMITTED);
            }
        });
    }

    /** The present one cannot be committed any more. */
    void doom() {
        registry.setRollbackOnly();
    }
}
