package org.demebook.consent;

import java.util.Set;
import java.util.UUID;

/**
 * Whether something may be seen or done.
 *
 * @param grantIds the grants that it rests on, one for each party, of several the one that was given first; empty where it
 *     is denied, and where the audience acts for a party
 */
public record Decision(boolean allowed, Set<UUID> grantIds) {
    static final Decision DENIED = new Decision(false, Set.of());
    static final Decision OWN = new Decision(true, Set.of());
}
