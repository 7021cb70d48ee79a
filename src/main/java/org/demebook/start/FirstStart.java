package org.demebook.start;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Inject;
import java.time.Clock;
import org.demebook.keeper.Accounts;

/** What happens once, when a node starts for the first time; and the clock that everybody reads. */
@ApplicationScoped
class FirstStart {
    @Inject
    Accounts accounts;

    @Produces
    @ApplicationScoped
    Clock clock() {
        return Clock.systemUTC();
    }

    void tellAdministrator(@Observes StartupEvent started) {
        accounts.firstAdministrator()
                .ifPresent(password -> System.out.printf(
                        "%n  First start. An account was made that runs this node; its password is told this once:%n"
                                + "    name      administrator%n    password  %s%n%n",
                        password));
    }
}
