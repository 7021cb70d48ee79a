package org.demebook.crossing;

import jakarta.enterprise.context.ApplicationScoped;
import org.demebook.crossing.CrossingView.Reach;
import org.jspecify.annotations.Nullable;

/** How far other nodes have followed. */
@ApplicationScoped
class Reaches {
    @Nullable
    Reach of(Crossing crossing) {
        return null;
    }
}
