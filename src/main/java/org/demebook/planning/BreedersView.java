package org.demebook.planning;

import java.time.LocalDate;
import java.util.List;
import org.demebook.notation.Sex;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * The living animals of the asker's collections: which of them may be paired on a day, and how they are related to each other.
 *
 * @param pairOn the day
 * @param meanKinship of all living animals of the population, in [0, 1]; null when none is alive
 * @param animals by sex, females first, and then by number
 * @param compared numbers of those in {@code kinship}: all, or the first sixty, those that may be paired before the others
 * @param kinship of each with each, in [0, 1], on the pedigree as the asker may see it or have it computed with
 * @param throughAncestorsNotShown true where figures rest on animals that are granted to be computed with and not to be seen
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record BreedersView(
        LocalDate pairOn,
        @Nullable Double meanKinship,
        List<Breeder> animals,
        List<String> compared,
        double[][] kinship,
        boolean throughAncestorsNotShown) {
    /**
     * @param number studbook number
     * @param meanKinship with the living animals of the population, itself included
     * @param hindrance what keeps it from being paired on the day; null where nothing does, and where its sex is not known
     * @param inTheWay that in words; null likewise
     * @param notes what is worth a second look before it is paired
     */
    public record Breeder(
            String number,
            Sex sex,
            @Nullable Double meanKinship,
            @Nullable Hindrance hindrance,
            @Nullable String inTheWay,
            List<String> notes) {

        /** Whether partners may be asked for. */
        public boolean isPairable() {
            return sex != Sex.UNKNOWN && hindrance == null;
        }
    }
}
