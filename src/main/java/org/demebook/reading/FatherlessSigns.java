package org.demebook.reading;

import com.fasterxml.jackson.annotation.JsonValue;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import org.demebook.chance.SexRatio;
import org.demebook.litter.Outcome;
import org.demebook.notation.Sex;
import org.demebook.rest.ShownTo;
import org.demebook.taxon.SexSystem;
import org.jspecify.annotations.Nullable;

/**
 * What speaks for young without a sire (parthenogenesis), each sign with its reason. Scored, never decided: a keeper may
 * take it so, by the sire kind {@code none}, and a DNA test tells.
 *
 * <p>The signs are those of Booth et al. (2011), Biol. Lett. (abstract): litters of females alone, all with the dam's
 * recessive colour, from dams that had been with males; and of the trade (common practice, no source).
 *
 * @param score how many signs were found, of {@code signs.size()}
 * @param suspected no male or only the dam's recessives, with a further sign; or young of one sex that chance does not
 *     explain, with a further sign; and no young that could only have a sire
 * @param chanceOfOneSex that as many young are all of one given sex, where those of known sex are; absent otherwise
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record FatherlessSigns(
        List<Sign> signs,
        int score,
        boolean suspected,
        @Nullable Double chanceOfOneSex,
        String sentence) {
    private static final int MONTHS_WITHOUT_MALE = 24;
    private static final double HARDLY_CHANCE = 0.01;
    private static final double UNEVEN = 1.96;

    /** @param reason in words, with what was counted */
    public record Sign(Kind kind, State state, String reason) {}

    public enum Kind {
        NO_MALE,
        ONLY_THE_DAMS_RECESSIVES,
        ONE_SEX,
        HALF_LOST,
        FEW_LIVE;

        @JsonValue
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    public enum State {
        FOUND,
        NOT_FOUND,
        UNKNOWN;

        @JsonValue
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * What is known of a litter.
     *
     * @param sexed its young of known sex; the others are left out
     * @param unsexed how many are left out
     * @param bornEarliest null where the day is open
     * @param lastMetOn the last day on which a male was with her; null where none is on record
     * @param noMale the keeper says that she met none in the last 24 months
     * @param onlyRecessives the keeper says that every young shows recessives of the dam alone
     * @param usualOvaAtLeast of a litter of this taxon
     * @param ofPopulation the sexes of the population's young
     */
    record Evidence(
            Outcome outcome,
            SexRatio sexed,
            int unsexed,
            SexSystem sexSystem,
            @Nullable LocalDate bornEarliest,
            @Nullable LocalDate lastMetOn,
            boolean noMale,
            boolean onlyRecessives,
            int usualOvaAtLeast,
            SexRatio ofPopulation) {}

    static FatherlessSigns of(Evidence evidence) {
        var signs = List.of(
                noMale(evidence), recessives(evidence), oneSex(evidence), halfLost(evidence), fewLive(evidence));
        int score =
                (int) signs.stream().filter(sign -> sign.state() == State.FOUND).count();
        boolean origin = signs.get(0).state() == State.FOUND || signs.get(1).state() == State.FOUND;
        boolean oneSex = signs.get(2).state() == State.FOUND;
        var chance = oneSex ? SexRatio.chanceOfAll(sexedOf(evidence)) : null;
        boolean suspected = score >= 2
                && (origin || oneSex && SexRatio.chanceOfAll(sexedOf(evidence)) < HARDLY_CHANCE)
                && !hasYoungOfASire(evidence);
        return new FatherlessSigns(signs, score, suspected, chance, sentence(evidence, score, signs.size(), suspected));
    }

    private static Sign noMale(Evidence evidence) {
        if (evidence.lastMetOn() == null || evidence.bornEarliest() == null) {
            return evidence.noMale()
                    ? new Sign(Kind.NO_MALE, State.FOUND, "You say that she met no male in the 24 months before.")
                    : new Sign(
                            Kind.NO_MALE,
                            State.UNKNOWN,
                            "No male is on record with her, which may only mean that nobody noted one. Say noMale if there was none in 24 months.");
        }
        long months = ChronoUnit.MONTHS.between(evidence.lastMetOn(), evidence.bornEarliest());
        return new Sign(
                Kind.NO_MALE,
                months >= MONTHS_WITHOUT_MALE ? State.FOUND : State.NOT_FOUND,
                "The last male on record was with her on %s, %d months before the birth."
                        .formatted(evidence.lastMetOn(), months));
    }

    private static Sign recessives(Evidence evidence) {
        return evidence.onlyRecessives()
                ? new Sign(
                        Kind.ONLY_THE_DAMS_RECESSIVES,
                        State.FOUND,
                        "You say that every young shows recessives of the dam alone.")
                : new Sign(
                        Kind.ONLY_THE_DAMS_RECESSIVES,
                        State.UNKNOWN,
                        "Say onlyRecessives if every young shows recessives of the dam alone.");
    }

    private static int sexedOf(Evidence evidence) {
        return evidence.sexed().males() + evidence.sexed().females();
    }

    /** The sex that fatherless young have; null where that is not known of the taxon. */
    private static @Nullable Sex fatherlessSex(SexSystem system) {
        return switch (system) {
            case XX_XY -> Sex.FEMALE;
            case ZZ_ZW -> Sex.MALE;
            case UNKNOWN -> null;
        };
    }

    private static boolean hasYoungOfASire(Evidence evidence) {
        var sex = fatherlessSex(evidence.sexSystem());
        return sex == Sex.FEMALE && evidence.sexed().males() > 0
                || sex == Sex.MALE && evidence.sexed().females() > 0
                || sex == null && !allOfOneSex(evidence.sexed());
    }

    private static boolean allOfOneSex(SexRatio sexed) {
        return sexed.males() == 0 || sexed.females() == 0;
    }

    private static Sign oneSex(Evidence evidence) {
        int sexed = sexedOf(evidence);
        if (sexed == 0) {
            return new Sign(
                    Kind.ONE_SEX,
                    State.UNKNOWN,
                    "No young of this litter is sexed; only those sexed with confidence count.");
        }
        var counted = "%d female and %d male, %d not sexed"
                .formatted(evidence.sexed().females(), evidence.sexed().males(), evidence.unsexed());
        if (hasYoungOfASire(evidence)) {
            return new Sign(
                    Kind.ONE_SEX,
                    State.NOT_FOUND,
                    "%s: where %s, they are not all fatherless.".formatted(counted, wordOf(evidence.sexSystem())));
        }
        return new Sign(
                Kind.ONE_SEX,
                State.FOUND,
                "%s: where %s, all fatherless ones are of one sex; chance alone brings it in %s of litters of %d.%s"
                        .formatted(
                                counted,
                                wordOf(evidence.sexSystem()),
                                percent(SexRatio.chanceOfAll(sexed)),
                                sexed,
                                uneven(evidence.ofPopulation())));
    }

    private static String wordOf(SexSystem system) {
        return switch (system) {
            case XX_XY -> "females are XX";
            case ZZ_ZW -> "males are ZZ";
            case UNKNOWN -> "nobody knows which chromosomes decide the sex";
        };
    }

    /** Where the young of a population are not half and half, the chance is another. */
    private static String uneven(SexRatio population) {
        if (Math.abs(population.deviations()) < UNEVEN) {
            return "";
        }
        return String.format(
                Locale.ROOT,
                " In this population %d males were born to %d females (z = %.2f), so take that chance as rough.",
                population.males(),
                population.females(),
                population.deviations());
    }

    private static String percent(double chance) {
        return String.format(Locale.ROOT, chance < 0.01 ? "%.2f %%" : "%.1f %%", 100 * chance);
    }

    private static Sign halfLost(Evidence evidence) {
        var outcome = evidence.outcome();
        int lost = outcome.unfertilised() + outcome.stillborn();
        return new Sign(
                Kind.HALF_LOST,
                2 * lost >= outcome.ovaFound() ? State.FOUND : State.NOT_FOUND,
                "%d of %d are slugs or stillborn.".formatted(lost, outcome.ovaFound()));
    }

    private static Sign fewLive(Evidence evidence) {
        int live = evidence.outcome().liveBorn();
        return new Sign(
                Kind.FEW_LIVE,
                live > 0 && live < evidence.usualOvaAtLeast() ? State.FOUND : State.NOT_FOUND,
                "%d live-born; a litter of this taxon usually has at least %d."
                        .formatted(live, evidence.usualOvaAtLeast()));
    }

    private static String sentence(Evidence evidence, int score, int signs, boolean suspected) {
        if (evidence.outcome().liveBorn() == 0) {
            return "No young lives that could be fatherless; %d of %d signs are there.".formatted(score, signs);
        }
        if (suspected) {
            return "Fatherless young suspected: %d of %d signs are there. That decides nothing; a DNA test tells. To take it so, state the sire as none."
                    .formatted(score, signs);
        }
        return hasYoungOfASire(evidence) && score > 0
                ? "Not suspected, although %d of %d signs are there: young of this litter could only have a sire."
                        .formatted(score, signs)
                : "Not suspected: %d of %d signs are there.".formatted(score, signs);
    }
}
