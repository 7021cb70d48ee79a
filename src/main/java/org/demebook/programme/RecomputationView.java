package org.demebook.programme;

import java.util.List;
import java.util.UUID;
import org.demebook.rest.ShownTo;

/**
 * Whether a plan comes out as it was issued when it is computed again from what it was computed with.
 *
 * @param equal every litter and every figure, to the last bit
 * @param differs what differs, by its name in the plan; empty when nothing does
 * @param computedFrom SHA-256 of what it was computed with, worked out anew
 * @param scope {@code whole}: the search was run again; {@code figures}: somebody had stopped it, so that only the figures of its pairs
 *     were computed again
 */
@ShownTo(ShownTo.Whom.MEMBERS)
public record RecomputationView(UUID plan, boolean equal, List<String> differs, String computedFrom, String scope) {}
