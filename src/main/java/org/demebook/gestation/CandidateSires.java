package org.demebook.gestation;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.UUID;
import org.demebook.taxon.TaxonProfile;

/**
 * The males that a litter may come from, worked out from whom its dam met. A later male does not exclude an earlier one:
 * several sires of one litter are common in snakes.
 *
 * <p>Shares are common practice, no source; the keeper may change them, a DNA test replaces them. A male who was with her at
 * the conception weighs 1; one whom she met before weighs half as much for every {@value #HALVED_EVERY_DAYS} days that his
 * sperm was stored, but at least {@value #LEAST_WEIGHT} as long as such storage is known; one beyond every published case
 * weighs nothing. Whoever was seen to mate with her weighs twice. The shares are the weights over their sum.
 */
public final class CandidateSires {
    static final int HALVED_EVERY_DAYS = 90;
    static final double LEAST_WEIGHT = 0.01;
    private static final int SEEN_WEIGHS = 2;
    private static final int DECIMALS = 4;

    private CandidateSires() {}

    /**
     * One male.
     *
     * @param lastMetOn last day before the birth on which they could mate
     * @param daysBeforeConception from that day to the conception; 0 when they were together then
     * @param share in [0, 1]; the shares of a litter sum to 1, or are all 0 when no male is within what is known
     */
    public record Candidate(
            UUID maleId,
            LocalDate lastMetOn,
            int daysBeforeConception,
            Grade grade,
            boolean copulationSeen,
            BigDecimal share) {}

    /** The candidates, the likeliest first; of equally likely ones the last met first. */
    public static List<Candidate> of(Conception conception, List<Meeting> meetings, TaxonProfile profile) {
        var lasts = new LinkedHashMap<UUID, Meeting>();
        meetings.stream()
                .filter(meeting -> !meeting.fromOn().isAfter(conception.lastPossibleOn()))
                .forEach(meeting -> lasts.merge(meeting.maleId(), meeting, CandidateSires::together));
        var found = new ArrayList<Candidate>();
        for (var last : lasts.values()) {
            long days = Math.max(0, ChronoUnit.DAYS.between(last.untilOn(), conception.earliestOn()));
            found.add(new Candidate(
                    last.maleId(),
                    last.untilOn(),
                    (int) days,
                    Grade.of(days, profile.breeding()),
                    last.copulationSeen(),
                    BigDecimal.ZERO));
        }
        return shared(found).stream()
                .sorted(Comparator.comparing(Candidate::share)
                        .thenComparing(Candidate::lastMetOn)
                        .reversed())
                .toList();
    }

    /** Of several meetings with one male the last one counts, and whether any was seen to succeed. */
    private static Meeting together(Meeting one, Meeting other) {
        return new Meeting(
                one.maleId(),
                one.fromOn().isBefore(other.fromOn()) ? one.fromOn() : other.fromOn(),
                one.untilOn().isAfter(other.untilOn()) ? one.untilOn() : other.untilOn(),
                one.copulationSeen() || other.copulationSeen());
    }

    private static double weight(Candidate male) {
        double weight =
                switch (male.grade()) {
                    case IN_TIME -> 1;
                    case STORED_SPERM, RARE ->
                        Math.max(LEAST_WEIGHT, Math.pow(0.5, (double) male.daysBeforeConception() / HALVED_EVERY_DAYS));
                    case BEYOND -> 0;
                };
        return male.copulationSeen() ? weight * SEEN_WEIGHS : weight;
    }

    /** Shares to four decimals, rounded down; what is left over goes to the largest, so that they sum to 1. */
    private static List<Candidate> shared(List<Candidate> males) {
        double sum = males.stream().mapToDouble(CandidateSires::weight).sum();
        if (sum == 0) {
            return males;
        }
        var shares = new ArrayList<BigDecimal>();
        var left = BigDecimal.ONE;
        int largest = 0;
        for (int i = 0; i < males.size(); i++) {
            var share = BigDecimal.valueOf(weight(males.get(i)) / sum).setScale(DECIMALS, RoundingMode.DOWN);
            shares.add(share);
            left = left.subtract(share);
            if (weight(males.get(i)) > weight(males.get(largest))) {
                largest = i;
            }
        }
        shares.set(largest, shares.get(largest).add(left));
        var shared = new ArrayList<Candidate>();
        for (int i = 0; i < males.size(); i++) {
            var male = males.get(i);
            shared.add(new Candidate(
                    male.maleId(),
                    male.lastMetOn(),
                    male.daysBeforeConception(),
                    male.grade(),
                    male.copulationSeen(),
                    shares.get(i)));
        }
        return shared;
    }
}
