package org.demebook.ancestry;

import java.util.Optional;
import org.demebook.kinship.PedigreeLoop;

/** What a kinship would be if records were of one animal of which a node claims it, and nobody agreed yet. */
final class ClaimedKinship {
    private ClaimedKinship() {}

    /** Empty where nothing is claimed, or what is claimed cannot be. O(population). */
    static Optional<Double> of(Records records, int row, int other) {
        var joined = records.ifClaimsHold();
        try {
            return joined.map(one -> new BirthTeller(one)
                    .pedigree()
                    .kinship(
                            one.row(records.animal(row).id()),
                            one.row(records.animal(other).id())));
        } catch (PedigreeLoop impossible) {
            return Optional.empty();
        }
    }
}
