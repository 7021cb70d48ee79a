package org.demebook.ancestry;

import org.demebook.rest.ShownTo;

/**
 * An animal that lives on another node, as far as its node told of it.
 *
 * @param node code of that node
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record ElsewhereView(String node, AncestryView ancestry) {}
