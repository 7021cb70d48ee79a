/**
 * Keepers: who they are, how they sign in, which populations they belong to in which role, and which collections they
 * act for.
 *
 * <p>Knows nothing of animals. Names and passwords stay in this room's own tables and never reach a journal; membership
 * and collections do, by id. Doors: {@link org.demebook.keeper.SignedIn} (who is asking), {@link
 * org.demebook.keeper.Keepers} (what they are here), {@link org.demebook.keeper.Accounts} (how they came in), {@link
 * org.demebook.keeper.Regions} (where their collections are, as coarsely as they state it).
 */
@NullMarked
package org.demebook.keeper;

import org.jspecify.annotations.NullMarked;
