/**
 * What a keeper writes down of an animal in their care: sheds, meals, measures, moves, health notes, tests, quarantine; and
 * what follows from it: how it grows, who is behind their siblings, whether a young may leave, and when it is likely to.
 *
 * <p>Records are private: they are seen by those who act for the collection that wrote them. Sheds, meals, measures and tests
 * go with the animal, so that whoever holds it now sees them too; tubs, health notes and quarantine stay behind. Whatever is
 * computed here is computed from what the asker sees.
 *
 * <p>Knows nothing of breeding, transfers or planning, and gives no veterinary advice. Doors: {@link
 * org.demebook.rearing.CareRecords}, {@link org.demebook.rearing.Rearing}.
 */
@NullMarked
package org.demebook.rearing;

import org.jspecify.annotations.NullMarked;
