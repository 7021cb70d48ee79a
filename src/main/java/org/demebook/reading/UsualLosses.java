package org.demebook.reading;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.demebook.chance.BetaBinomial;
import org.demebook.chance.UnevenRate;
import org.demebook.chance.UnevenRate.Count;
import org.demebook.litter.Outcome;
import org.demebook.reading.LossReading.Loss;
import org.demebook.reading.LossReading.Verdict;
import org.jspecify.annotations.Nullable;

/** What litters usually lose, told by others of the same population or, where they are few, by common practice. */
final class UsualLosses {
    private static final double USUAL = 0.10;
    private static final double UNUSUAL_BELOW = 0.01; // where common practice is all that it is compared with
    private static final String VETERINARIAN =
            "If she is weak, strains, has a discharge, or it happens again: see a reptile veterinarian.";

    private final int litters;
    private final Map<Loss, UnevenRate> rates = new EnumMap<>(Loss.class);

    /** About 0.1 s for a thousand litters. */
    UsualLosses(List<Outcome> others) {
        litters = others.size();
        if (litters >= LitterReading.FEWEST_LITTERS) {
            for (var loss : Loss.values()) {
                var counts = others.stream()
                        .flatMap(other -> count(loss, other).stream())
                        .toList();
                rates.put(loss, UnevenRate.of(USUAL, counts));
            }
        }
    }

    LitterReading read(Outcome outcome, @Nullable Integer daysFromShed) {
        var losses = new ArrayList<LossReading>();
        for (var loss : Loss.values()) {
            count(loss, outcome).ifPresent(count -> losses.add(read(loss, count)));
        }
        return new LitterReading(daysFromShed, litters, losses, worthChecking(outcome, losses));
    }

    /** Empty where there was nothing that could be lost in this way. */
    private static Optional<Count> count(Loss loss, Outcome outcome) {
        var count =
                switch (loss) {
                    case UNFERTILISED -> new Count(outcome.unfertilised(), outcome.ovaFound());
                    case DEAD_IN_SAC_OR_AT_BIRTH ->
                        new Count(
                                outcome.stillborn() + outcome.partDeveloped(),
                                outcome.ovaFound() - outcome.unfertilised());
                    case MALFORMED ->
                        new Count(
                                outcome.malformedLive() + outcome.malformedStillborn(),
                                outcome.liveBorn() + outcome.stillborn());
                };
        return count.of() > 0 ? Optional.of(count) : Optional.empty();
    }

    private LossReading read(Loss loss, Count count) {
        var rate = rates.get(loss);
        if (rate == null) {
            var usual = new BetaBinomial(USUAL, 0);
            var basis = "one in ten is taken as usual (common practice), since %s to compare with".formatted(few());
            return reading(loss, count, USUAL, 0, usual.upperTail(count.hit(), count.of()), UNUSUAL_BELOW, basis);
        }
        var basis = "%s are usual in the %d litters compared with".formatted(percent(rate.share()), litters);
        return reading(
                loss,
                count,
                rate.share(),
                rate.overdispersion(),
                rate.upperTail(count.hit(), count.of()),
                loss.unusualBelow(),
                basis);
    }

    private String few() {
        return switch (litters) {
            case 0 -> "there is no other litter";
            case 1 -> "there is only one other litter";
            default -> "there are only %d other litters".formatted(litters);
        };
    }

    private static LossReading reading(
            Loss loss,
            Count count,
            double share,
            double overdispersion,
            double probability,
            double unusualBelow,
            String basis) {
        // never alarm on one bad egg
        var unusual = count.hit() > 1 && probability < unusualBelow;
        var sentence = "%d of %d %s is %s: chance alone brings as many or more in %s of litters; %s."
                .formatted(
                        count.hit(),
                        count.of(),
                        loss.trade(),
                        unusual ? "more than chance explains" : "within chance",
                        percent(probability),
                        basis);
        return new LossReading(
                loss,
                count.hit(),
                count.of(),
                share,
                overdispersion,
                probability,
                unusual ? Verdict.UNUSUAL : Verdict.WITHIN_CHANCE,
                sentence);
    }

    private static String percent(double share) {
        if (share < 0.001) {
            return "less than 0.1 %";
        }
        return String.format(Locale.ROOT, share < 0.0995 ? "%.1f %%" : "%.0f %%", 100 * share);
    }

    /** Common practice of the trade, no source, where none is named: what to look at, not what it was. */
    private static List<String> worthChecking(Outcome outcome, List<LossReading> losses) {
        var worth = new ArrayList<String>();
        boolean slugs = isUnusual(Loss.UNFERTILISED, losses);
        boolean dead = isUnusual(Loss.DEAD_IN_SAC_OR_AT_BIRTH, losses);
        if (outcome.unfertilised().equals(outcome.ovaFound()) && outcome.ovaFound() > 1) {
            worth.add(
                    "The whole litter is slugs. Worth checking: whether the pair mated at all, the male's fertility, the"
                            + " signs of fatherless young, cooling and warmth before, an illness of hers.");
        } else if (slugs && 3 * outcome.unfertilised() >= outcome.ovaFound()) {
            worth.add("A third or more are slugs. Worth checking: the male's fertility and the time of the matings, how"
                    + " often they mated, sperm stored for long, a young or an overweight female.");
        }
        if (dead || isUnusual(Loss.MALFORMED, losses)) {
            worth.add("Many full-term young were stillborn, dead in the sac or malformed. Worth checking: how warm she"
                    + " lay and how evenly, a long labour, toxins, an infection (tests of both parents), and how closely"
                    + " the parents are related.");
        }
        if ((slugs || dead) && 3 * (outcome.earlyDead() + outcome.partDeveloped()) >= outcome.ovaFound()) {
            worth.add("Many had begun to develop and stopped. Worth checking: overweight, heat, rough handling, an ovum"
                    + " or foetus of an earlier litter that she kept.");
        }
        if (!worth.isEmpty()) {
            worth.add(VETERINARIAN);
        }
        return worth;
    }

    private static boolean isUnusual(Loss loss, List<LossReading> losses) {
        return losses.stream().anyMatch(reading -> reading.loss() == loss && reading.verdict() == Verdict.UNUSUAL);
    }
}
