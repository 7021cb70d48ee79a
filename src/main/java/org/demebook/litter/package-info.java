/**
 * Litters: what was born of whom, and what came of each ovum.
 *
 * <p>A litter belongs to the collection that held its dam at the birth; whoever acts for that collection, or holds the dam
 * now, sees it. For every other member there is no litter: that some animals share one, its dam and its day stand on the
 * animals themselves. What was noted of the dam before the birth it asks of {@link org.demebook.litter.BreedingRecord},
 * which other rooms keep. Knows nothing of transfers, planning or federation. Doors: {@link org.demebook.litter.Litters}, {@link org.demebook.litter.BirthDays}.
 */
@NullMarked
package org.demebook.litter;

import org.jspecify.annotations.NullMarked;
