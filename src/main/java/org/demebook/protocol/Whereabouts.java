package org.demebook.protocol;

import java.util.UUID;

/** Where an animal is, as the journals that are held here tell. */
public sealed interface Whereabouts {
    /** @param offered whether it is on offer to another node */
    record Held(String node, boolean offered) implements Whereabouts {}

    /** Released and not yet taken: with neither. */
    record InTransit(String from, String to, UUID transfer) implements Whereabouts {}

    /** Nobody has entered it, as far as is known here. */
    record Unknown() implements Whereabouts {}
}
