package org.demebook.planning;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.List;
import org.demebook.ancestry.FigureRange;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * Pairs worth breeding, the one that loads the pool least first.
 *
 * <p>Two figures, never one score: the pair's kinship decides how inbred the young are, their mean kinships and the number
 * of young kept decide how much gene diversity the population has afterwards. Animals on hold are not proposed, and count
 * in these figures like every living animal.
 *
 * @param animal studbook number of the one that partners were asked for; absent when the question was about many
 * @param scope {@code one-animal}; {@code your-collections}: pairs with one animal of yours; {@code population}: all
 *     that may be seen, for coordinators
 * @param maximumInbreeding no pair is proposed whose young would be more inbred
 * @param geneDiversity of the living animals now, in [0, 1]; absent when none is alive
 * @param meanKinship of the living animals now, in [0, 1]; absent when none is alive
 * @param convention {@code unrelated}: an unknown parent counts as unrelated to all, which flatters
 * @param excluded when partners for one animal were asked for: those of the other sex that are not proposed, and why
 * @param arrival when an animal that travels to the other has to be there; absent unless a day of pairing was asked about
 * @param throughAncestorsNotShown true where a figure rests on animals that are granted to be computed with and not to be
 *     seen; absent otherwise
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record PairingsView(
        @Nullable String animal,
        String scope,
        double maximumInbreeding,
        @Nullable Double geneDiversity,
        @Nullable Double meanKinship,
        String convention,
        List<Pairing> pairings,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Excluded> excluded,
        @Nullable Arrival arrival,
        @Nullable Boolean throughAncestorsNotShown) {

    /**
     * Counted back from the day of pairing.
     *
     * @param daysOfQuarantine of the population's profile: a newcomer is kept apart as long
     * @param latestOn the last day on which it may come, for the quarantine to be over
     * @param reason in words
     */
    public record Arrival(LocalDate pairOn, int daysOfQuarantine, LocalDate latestOn, String reason) {
        static Arrival before(LocalDate pairOn, int daysOfQuarantine, LocalDate today) {
            var latest = pairOn.minusDays(daysOfQuarantine);
            return new Arrival(
                    pairOn,
                    daysOfQuarantine,
                    latest,
                    latest.isBefore(today)
                            ? "An animal that arrives today has %d days of quarantine until %s: pair animals that live together, or later."
                                    .formatted(daysOfQuarantine, today.plusDays(daysOfQuarantine))
                            : "Whichever of the two travels arrives by %s, for %d days of quarantine before %s."
                                    .formatted(latest, daysOfQuarantine, pairOn));
        }
    }

    /**
     * @param inbreedingOfYoung F of young of the two: their kinship, as far as it is known; the best case
     * @param ifUnknownAreSiblings what it would be if all unknown parents were full siblings of each other, the customary worst case;
     *     absent where all ancestry of the two is known
     * @param bySire from the lowest to the highest that it may be; absent where it depends on no sire that is one of several
     * @param meanKinship the mean of the two; of their young it is the same
     * @param keep how many young kept in the population leave most gene diversity; 0 when each one lowers it
     * @param kept gene diversity by the number of young kept, all other animals kept too; 0 young is now
     * @param reason in words
     * @param doubtfulSiresOf studbook numbers, of the two and their ancestors, whose sire is doubtful: the figures take each
     *     as true; absent when none is
     * @param notes what is worth a second look
     */
    public record Pairing(
            Parent dam,
            Parent sire,
            double inbreedingOfYoung,
            @Nullable Double ifUnknownAreSiblings,
            @Nullable FigureRange bySire,
            double meanKinship,
            int keep,
            List<Kept> kept,
            String reason,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> doubtfulSiresOf,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> notes) {}

    /**
     * @param number studbook number
     * @param meanKinship with the living animals of the population, itself included
     * @param knownAncestry the share of its genome, in [0, 1], that traces to stated founders
     * @param keptBy with whom it lives, never who that is: "a keeper, about 400 km away, tests in date", as far as the coarse
     *     place and health may be computed with to pair animals; of one that lives elsewhere "a keeper on another node (U)";
     *     absent of your own animals
     */
    public record Parent(
            String number,
            double meanKinship,
            double knownAncestry,
            @Nullable String keptBy) {}

    public record Kept(int young, double geneDiversity) {}

    /**
     * @param number studbook number
     * @param inbreedingOfYoung F of young with it
     * @param reason in words
     */
    public record Excluded(String number, double inbreedingOfYoung, String reason) {}
}
