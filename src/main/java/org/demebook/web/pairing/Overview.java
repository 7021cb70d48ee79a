package org.demebook.web.pairing;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.demebook.planning.BreedersView.Breeder;
import org.demebook.plot.HeatMap;
import org.jspecify.annotations.Nullable;

/**
 * A keeper's animals to find partners for, and pairs worth breeding.
 *
 * @param meanKinship of the population: whose own is lower carries rare genes
 * @param unable of known sex, that may not be paired on the day
 * @param unsexed how many are of no known sex
 * @param ofPopulation whether pairs of others are among those suggested
 */
public record Overview(
        LocalDate pairOn,
        @Nullable Double meanKinship,
        Some females,
        Some males,
        Some unable,
        int unsexed,
        HeatMap map,
        boolean throughAncestorsNotShown,
        List<Suggestion> suggested,
        boolean ofPopulation) {

    public boolean isEmpty() {
        return females.isEmpty() && males.isEmpty() && unable.isEmpty() && unsexed == 0;
    }

    /** The first of many animals, those with the rarest genes; how many they all are. */
    public record Some(List<Breeder> animals, int all) {
        private static final int MOST = 40;

        static Some of(Stream<Breeder> all) {
            var sorted = all.sorted(
                            Comparator.comparing(Breeder::meanKinship, Comparator.nullsLast(Comparator.naturalOrder())))
                    .toList();
            return new Some(sorted.stream().limit(MOST).toList(), sorted.size());
        }

        public boolean isEmpty() {
            return all == 0;
        }

        /** How many are not among them. */
        public int more() {
            return all - animals.size();
        }
    }

    /** Whether an animal carries genes that are rare in the population. */
    public boolean rare(Breeder animal) {
        return meanKinship != null && animal.meanKinship() != null && animal.meanKinship() < meanKinship;
    }

    /**
     * @param yours which of the two is the reader's, to look for other partners of it; null: none
     * @param before gene diversity now
     * @param after gene diversity with {@code keep} young
     */
    public record Suggestion(
            String dam,
            String sire,
            @Nullable String yours,
            double inbreeding,
            @Nullable String fraction,
            int keep,
            double before,
            double after) {}
}
