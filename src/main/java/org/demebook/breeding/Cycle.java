package org.demebook.breeding;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.demebook.gestation.Interval;
import org.demebook.gestation.Landmark;
import org.demebook.litter.Birth;
import org.demebook.notation.RoughDate;
import org.demebook.taxon.BirthMode;
import org.jspecify.annotations.Nullable;

/**
 * A female's breeding cycle as it looks on a day: the signs since her last litter, and none older than {@value #DAYS} days.
 *
 * @param since the day after which it began: of her last litter, or {@value #DAYS} days ago
 * @param signs in the order of their days
 */
record Cycle(BirthMode mode, LocalDate since, List<Sign> signs) {
    static final int DAYS = 400;

    /** Labour noted so soon after a birth is that of the birth: one often goes past midnight. */
    private static final int DAYS_OF_LABOUR = 14;

    /** How a cycle stands. */
    enum State {
        NOTHING_NOTED,
        GRAVID,
        /** Eggs are laid and have not hatched. */
        LAID,
        IN_LABOUR,
        /** Labour is over, and no litter is registered. */
        LABOUR_FINISHED
    }

    /**
     * @param signs of one female
     * @param births of the same
     */
    static Cycle of(BirthMode mode, List<Sign> signs, List<Birth> births, LocalDate on) {
        var last = births.stream()
                .map(Birth::born)
                .filter(born -> first(born) != null && !first(born).isAfter(on))
                .map(Cycle::last)
                .max(Comparator.naturalOrder());
        var oldest = on.minusDays(DAYS);
        var since = last.filter(born -> born.isAfter(oldest)).orElse(oldest);
        return new Cycle(
                mode,
                since,
                signs.stream()
                        .filter(sign -> !sign.on().isAfter(on) && sign.on().isAfter(since))
                        .filter(sign -> !sign.kind().isLabour()
                                || last.isEmpty()
                                || sign.on().isAfter(last.get().plusDays(DAYS_OF_LABOUR)))
                        .sorted(Comparator.comparing(Sign::on).thenComparing(Sign::id))
                        .toList());
    }

    /** The cycle that ended in a birth, which may be among the births already. */
    static Cycle before(RoughDate born, BirthMode mode, List<Sign> signs, List<Birth> births) {
        var earlier =
                births.stream().filter(birth -> birth.born().surelyBefore(born)).toList();
        return of(mode, signs, earlier, last(born));
    }

    private static @Nullable LocalDate first(RoughDate born) {
        return born.earliest() == null ? born.latest() : born.earliest();
    }

    private static LocalDate last(RoughDate born) {
        return born.latest() == null ? born.earliest() : born.latest();
    }

    State state() {
        var labour = lastOf(SignKind.LABOUR_STARTED, SignKind.LABOUR_FINISHED);
        var laid = mode == BirthMode.EGG_LAYING ? lastOf(SignKind.LAYING) : Optional.<Sign>empty();
        if (laid.isPresent()
                && labour.map(sign -> !sign.on().isAfter(laid.get().on())).orElse(true)) {
            return State.LAID;
        }
        if (labour.isPresent()) {
            return labour.get().kind() == SignKind.LABOUR_STARTED ? State.IN_LABOUR : State.LABOUR_FINISHED;
        }
        return lastOf(SignKind.OVULATION, SignKind.POST_OVULATION_SHED).isPresent()
                ? State.GRAVID
                : State.NOTHING_NOTED;
    }

    /** An ovulation or a shed after it, and neither litter nor clutch nor the end of labour since. */
    boolean gravid() {
        var conceived = lastOf(SignKind.OVULATION, SignKind.POST_OVULATION_SHED).isPresent();
        return conceived && (state() == State.GRAVID || state() == State.IN_LABOUR);
    }

    /** The sign that tells the day best: the one dated most surely, of equally sure ones the last. */
    Optional<Sign> best() {
        var wanted = mode == BirthMode.EGG_LAYING
                ? List.of(SignKind.LAYING)
                : List.of(SignKind.POST_OVULATION_SHED, SignKind.OVULATION);
        return signs.stream()
                .filter(sign -> wanted.contains(sign.kind()))
                .min(Comparator.comparing(
                                (Sign sign) -> sign.landmark().orElseThrow().variance())
                        .thenComparing(Sign::on, Comparator.reverseOrder()));
    }

    /** Days to the birth from the best sign of the cycle that it ended; empty where either day is not known. */
    static Optional<Interval> interval(Birth birth, BirthMode mode, List<Sign> signs, List<Birth> births) {
        return birth.born().day().flatMap(born -> before(birth.born(), mode, signs, births)
                .best()
                .flatMap(Sign::landmark)
                .map(from -> new Interval(birth.damId(), from, born)));
    }

    /** The last shed after ovulation. */
    Optional<Sign> shed() {
        return lastOf(SignKind.POST_OVULATION_SHED);
    }

    Optional<Landmark.Noted> ovulation() {
        return lastOf(SignKind.OVULATION).flatMap(Sign::landmark);
    }

    /** Labour that goes on. */
    Optional<Sign> labour() {
        return state() == State.IN_LABOUR ? lastOf(SignKind.LABOUR_STARTED) : Optional.empty();
    }

    Optional<Sign> lastOf(SignKind... kinds) {
        var wanted = List.of(kinds);
        return signs.stream()
                .filter(sign -> wanted.contains(sign.kind()))
                // labour is told by the hour; finished on the same day is after started
                .max(Comparator.comparing(Sign::on)
                        .thenComparing(sign -> sign.at() == null ? Instant.MAX : sign.at())
                        .thenComparing(Sign::kind)
                        .thenComparing(Sign::id));
    }
}
