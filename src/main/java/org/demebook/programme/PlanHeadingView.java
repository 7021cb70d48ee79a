package org.demebook.programme;

import java.time.LocalDate;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * That a plan was issued, and nothing of what it holds.
 *
 * @param follows the plan before, of the same season
 * @param pairOn the day on which animals are put together
 * @param inForce it is the last that was issued
 */
@ShownTo(ShownTo.Whom.MEMBERS)
public record PlanHeadingView(UUID id, @Nullable UUID follows, LocalDate issuedOn, LocalDate pairOn, boolean inForce) {}
