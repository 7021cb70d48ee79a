package org.demebook.litter;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.gestation.Grade;
import org.demebook.problem.Rule;
import org.demebook.registry.Breach;
import org.demebook.registry.StatedSire;
import org.demebook.registry.StatedSire.StatedCandidate;

/**
 * The sire of a litter as the males that its dam met tell it: the only one, several with their shares, or unknown.
 *
 * <p>Of several males each young may have another, unless it is said that one sired them all. That several sire one litter
 * is common in snakes (published counts go from a third of the clutches of indigo snakes to 6 of 8 litters of garter snakes),
 * and whom a female met says nothing of how many did; one sire for all would be a further claim, that littermates are full
 * siblings, which nobody has made. So a DNA test of one young tells of that young alone, and its littermates keep their
 * shares. The kinship of a young with anybody but a littermate is the
 * same either way; with a littermate it is the lower one, between half and full siblings as far as the shares tell.
 *
 * @param findings why, for the keeper to look at
 */
record WorkedOutSire(StatedSire sire, List<Breach> findings) {
    static final String KIND = "worked-out";
    private static final int DECIMALS = 8;

    /**
     * @param dam studbook number
     * @param mates the likeliest first
     * @param numbers studbook numbers of the mates
     * @param oneForAll it is said that one male sired them all; otherwise each young may have another
     */
    static WorkedOutSire of(String dam, List<Mate> mates, Map<UUID, String> numbers, boolean oneForAll) {
        var possible = mates.stream().filter(WorkedOutSire::isPossible).toList();
        var males = possible.stream().map(mate -> told(mate, numbers)).collect(Collectors.joining("; "));
        if (possible.isEmpty()) {
            return new WorkedOutSire(StatedSire.UNKNOWN, List.of(unknown(dam, mates, numbers)));
        }
        if (possible.size() == 1) {
            var mate = possible.get(0);
            var only = numbers.get(mate.maleId());
            var message = "%s is taken as the sire: the only male on record with %s that it may be (%s)."
                    .formatted(only, dam, males);
            return mate.grade() == Grade.RARE
                    ? new WorkedOutSire(
                            StatedSire.doubted(only),
                            List.of(Breach.warning(Rule.STORED_SPERM, "sire", only, message, null)))
                    : new WorkedOutSire(StatedSire.known(only), List.of(Notice.of("sire.kind", only, message)));
        }
        var sire = StatedSire.candidates(candidates(possible, numbers), oneForAll);
        return new WorkedOutSire(
                sire,
                List.of(
                        Notice.of(
                                "sire.kind",
                                null,
                                "%d males on record with %s may be the sire: %s. %s"
                                        .formatted(
                                                possible.size(),
                                                dam,
                                                males,
                                                oneForAll
                                                        ? "You say that one of them sired all young; a DNA test of one young tells which."
                                                        : "Each young may have another; a DNA test of a young tells which is its own."))));
    }

    private static boolean isPossible(Mate mate) {
        return mate.grade() != Grade.BEYOND && probability(mate).signum() > 0;
    }

    private static BigDecimal probability(Mate mate) {
        return mate.share().setScale(DECIMALS, RoundingMode.DOWN);
    }

    private static List<StatedCandidate> candidates(List<Mate> possible, Map<UUID, String> numbers) {
        var candidates = new ArrayList<StatedCandidate>();
        for (var mate : possible) {
            candidates.add(new StatedCandidate(
                    numbers.get(mate.maleId()), probability(mate).stripTrailingZeros()));
        }
        return candidates;
    }

    private static Breach unknown(String dam, List<Mate> mates, Map<UUID, String> numbers) {
        if (mates.isEmpty()) {
            return Notice.of(
                    "sire.kind",
                    null,
                    "No male is on record with %s before this birth, so the sire stays unknown. Note her introductions, name him, or look at the signs of fatherless young."
                            .formatted(dam));
        }
        return Notice.of(
                "sire.kind",
                null,
                "The sire stays unknown: %s. Consider another male, or none."
                        .formatted(
                                mates.stream().map(mate -> told(mate, numbers)).collect(Collectors.joining("; "))));
    }

    private static String told(Mate mate, Map<UUID, String> numbers) {
        return "%s, %s, last with her on %s"
                .formatted(numbers.get(mate.maleId()), mate.grade().words(), mate.lastMetOn());
    }
}
