package org.demebook.census;

import jakarta.validation.constraints.NotNull;
import org.demebook.rest.ShownTo;

/**
 * Whether you do without the protection of your own numbers in published counts. Of a household, all have to.
 *
 * @param waived true: a count may be told although it shows what you have
 */
@ShownTo(ShownTo.Whom.MEMBERS)
public record CountWaiverView(@NotNull Boolean waived) {}
