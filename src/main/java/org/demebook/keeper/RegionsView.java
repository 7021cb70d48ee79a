package org.demebook.keeper;

import java.util.List;
import org.demebook.rest.ShownTo;

/**
 * The regions of a population, which tell nothing of who is where.
 *
 * @param names in the association's order; none where it fixed none
 * @param revision to change them on
 */
@ShownTo(ShownTo.Whom.MEMBERS)
public record RegionsView(List<String> names, long revision) {}
