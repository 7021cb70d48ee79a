package org.demebook.telling;

import java.util.SortedMap;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * The population over all its nodes, as far as everybody is told of it. The same heads give the same figures on every node, to the last
 * bit.
 *
 * @param heads by node id, how many entries of its journal the figures rest on
 * @param animals how many are told of
 * @param living how many of these live
 * @param geneDiversity of the living, in [0, 1]; absent while none lives
 * @param meanKinship in [0, 1]; absent while none lives
 * @param founderGenomeEquivalents by coancestry; absent while none lives
 * @param knownAncestry the share of all genes of the living, in [0, 1], that traces to stated founders; absent while none lives
 * @param convention {@code unrelated}: an unknown parent counts as unrelated to all
 */
@ShownTo(ShownTo.Whom.MEMBERS)
record FederatedFiguresView(
        SortedMap<String, Long> heads,
        int animals,
        int living,
        @Nullable Double geneDiversity,
        @Nullable Double meanKinship,
        @Nullable Double founderGenomeEquivalents,
        @Nullable Double knownAncestry,
        String convention) {}
