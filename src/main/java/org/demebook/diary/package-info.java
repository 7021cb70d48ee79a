/**
 * What a keeper writes down of an animal in their care: sheds, meals, measures, moves, health notes, tests, quarantine.
 *
 * <p>Records are private: they are seen by those who act for the collection that wrote them. Sheds, meals, measures and tests
 * go with the animal, so that whoever holds it now sees them too; tubs, health notes and quarantine stay behind.
 *
 * <p>Knows nothing of what follows from the records, and gives no veterinary advice. Door: {@link
 * org.demebook.diary.CareRecords}; it hands out each animal's {@link org.demebook.diary.Diary}.
 */
@NullMarked
package org.demebook.diary;

import org.jspecify.annotations.NullMarked;
