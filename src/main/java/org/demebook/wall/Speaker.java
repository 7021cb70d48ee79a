package org.demebook.wall;

import io.quarkus.arc.Arc;
import io.quarkus.arc.Unremovable;
import jakarta.enterprise.context.RequestScoped;
import java.util.UUID;

/** The keeper for whom the present request asks the database. */
@Unremovable // is asked for by name
@RequestScoped
class Speaker {
    private UUID keeperId = Seals.NOBODY;

    void is(UUID keeperId) {
        this.keeperId = keeperId;
    }

    UUID keeperId() {
        return keeperId;
    }

    /** Nobody, where there is no request. */
    static UUID present() {
        var container = Arc.container();
        return container.requestContext().isActive()
                ? container.instance(Speaker.class).get().keeperId()
                : Seals.NOBODY;
    }
}
