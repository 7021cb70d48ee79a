package org.demebook.federation;

import java.util.UUID;

/** What a room looks after now and then in every shared population. */
public interface Regular {
    /**
     * Called about once a second, outside any transaction and by one thread at a time. What it throws is logged; the next call comes
     * as usual.
     */
    void tick(UUID population);
}
