package org.demebook.rest;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Of a view whose components are not granted one by one: to whom all of it is shown, and to nobody else. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.TYPE)
public @interface ShownTo {
    Whom value();

    /** Whom a view is for. */
    enum Whom {
        /** Who wrote the record, and who holds the animal. */
        WRITER_AND_HOLDER,
        /** Both sides of a transfer, a claim or an approach, each of which has agreed to show it by taking part. */
        BOTH_SIDES,
        /** Whoever asks: what it holds was computed from what they may see, or let compute, alone. */
        ASKER_AS_FAR_AS_GRANTED,
        /** Members of the population, or who signs in: it tells of the population or the node, of no keeper's animal. */
        MEMBERS,
        /** Who coordinates the population: it tells of what nobody on this node keeps, no more than members may read of it. */
        COORDINATORS,
        /** Who runs the node: it tells of the node and of other nodes, of no keeper and no animal. */
        ADMINISTRATORS,
        /** Everybody: it is published. */
        EVERYBODY
    }
}
