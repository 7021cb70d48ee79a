package org.demebook;

import io.quarkus.arc.Arc;
import io.quarkus.hibernate.orm.PersistenceUnitExtension;
import io.quarkus.vertx.http.runtime.CurrentVertxRequest;
import java.util.concurrent.atomic.AtomicLong;
import org.hibernate.resource.jdbc.spi.StatementInspector;

/**
 * How many statements Hibernate has sent to the database for requests, and for the asking thread. The factory's own statistics also
 * count what the server does meanwhile for itself: sending disclosures, settling with other nodes.
 */
@PersistenceUnitExtension
public class StatementCount implements StatementInspector {
    private static final AtomicLong OF_REQUESTS = new AtomicLong();
    private static final ThreadLocal<Long> OF_THREAD = ThreadLocal.withInitial(() -> 0L);

    @Override
    public String inspect(String sql) {
        OF_THREAD.set(OF_THREAD.get() + 1);
        if (isInRequest()) {
            OF_REQUESTS.incrementAndGet();
        }
        return sql;
    }

    public static long ofRequests() {
        return OF_REQUESTS.get();
    }

    public static long ofThisThread() {
        return OF_THREAD.get();
    }

    private static boolean isInRequest() {
        return Arc.container().requestContext().isActive()
                && Arc.container().instance(CurrentVertxRequest.class).get().getCurrent() != null;
    }
}
