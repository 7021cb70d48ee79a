package org.demebook.federation;

import io.quarkus.arc.Unremovable;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.UUID;
import org.demebook.keeper.Asker;

/** What an administrator does, for tests that play another node. */
@ApplicationScoped
@Unremovable
class SharedInTests {
    @Inject
    Sharing sharing;

    @Inject
    Federations federations;

    void share(Asker by, UUID population) {
        sharing.share(by, population);
    }

    Federations federations() {
        return federations;
    }
}
