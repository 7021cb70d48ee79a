/**
 * The register read as a graph: who descends from whom, numbered for {@code kinship} and kept in memory until the journal
 * of the population moves on; and the figures that follow from it.
 *
 * <p>Each asker has a graph of their own, of what they may see or have computed with; nobody's figure rests on anything else.
 *
 * <p>Writes nothing, and knows nothing of litters, transfers and plans. Hands rows and arrays to the rooms that compute,
 * and views by studbook number to members; a view never says where an animal lives. Door: {@link
 * org.demebook.ancestry.Ancestries}.
 */
@NullMarked
package org.demebook.ancestry;

import org.jspecify.annotations.NullMarked;
