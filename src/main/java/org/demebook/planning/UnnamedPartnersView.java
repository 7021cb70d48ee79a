package org.demebook.planning;

import java.util.List;
import org.demebook.rest.ShownTo;

/**
 * Animals of others that would suit as partners and are granted to be computed with and not to be seen. No figure is told of
 * them, no order, and nothing that would tell who they are.
 *
 * @param animal studbook number of the one that partners were asked for
 * @param month the calendar month for which the answer stands, {@code 2026-11}; asked again in it, the same animal gets the
 *     same answer
 * @param partners a pseudonym each, at most five, in the order of the pseudonyms; those of another month or another animal
 *     tell nothing of them
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record UnnamedPartnersView(String animal, String month, List<String> partners) {}
