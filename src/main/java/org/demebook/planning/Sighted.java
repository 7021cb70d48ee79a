package org.demebook.planning;

import org.demebook.ancestry.Snapshot;
import org.demebook.consent.Lens;
import org.demebook.taxon.TaxonProfile;

/**
 * What one asker may know of the population, and which of it may be proposed to them, for a day of pairing.
 *
 * @param places by row, and what lies between them
 * @param lens of the asker, for pairing
 */
record Sighted(
        Snapshot snapshot, OwnAnimals own, Candidates candidates, Places places, Lens lens, TaxonProfile profile) {}
