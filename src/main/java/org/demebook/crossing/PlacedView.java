package org.demebook.crossing;

import org.demebook.rest.ShownTo;

/**
 * An adopted animal that has a keeper on this node now.
 *
 * @param animal what it is called between nodes
 * @param number studbook number under which it stands in this register
 * @param to sign-in name of its keeper
 */
@ShownTo(ShownTo.Whom.COORDINATORS)
public record PlacedView(String animal, String number, String to) {}
