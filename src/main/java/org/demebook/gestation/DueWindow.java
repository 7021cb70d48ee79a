package org.demebook.gestation;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.demebook.taxon.TaxonProfile.Gestation;
import org.jspecify.annotations.Nullable;

/**
 * When a birth or a hatching is expected, with how surely, and why.
 *
 * <p>The days of one female are normal about her own mean, of which her earlier litters tell something ({@link OwnMean});
 * what she is held against is the taxon's profile or the population's own data ({@link Usual}). The window is the predictive
 * distribution of her next interval; a sign whose day is in doubt, or that is not the shed, widens it by the variance of that
 * doubt. It is calibrated: over many females, half of the births fall in the first window, nine of ten in the second.
 *
 * @param from the sign that it is counted from
 * @param expectedDays from that sign
 * @param spreadDays standard deviation of the prediction
 * @param ownMean what is known of her own mean, from the shed or the laying
 * @param fifty half of the births fall in it
 * @param ninety nine of ten births fall in it
 * @param likely what to reckon with: the profile's usual window as long as nothing else is known, else {@code ninety}
 * @param earliestOn from here on a birth is to be reckoned with
 * @param overdueOn from here on she is past the likely days
 * @param withoutHistoryOn the expected day if she had no earlier litters; null when she has none
 * @param reason in sentences
 */
public record DueWindow(
        Landmark.Noted from,
        LocalDate expectedOn,
        double expectedDays,
        double spreadDays,
        OwnMean ownMean,
        DaySpan fifty,
        DaySpan ninety,
        DaySpan likely,
        LocalDate earliestOn,
        LocalDate overdueOn,
        @Nullable LocalDate withoutHistoryOn,
        String reason) {
    /** Standard deviations on both sides that hold half of a normal distribution, and nine tenths of it. */
    private static final double HALF = 0.674489750;

    private static final double NINE_TENTHS = 1.644853627;

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

    /**
     * @param profileName whose figures they are, for the reason
     * @param own intervals of this female's earlier litters
     * @param others intervals of the other females of her population
     */
    public static DueWindow of(
            Landmark.Noted sign, Gestation profile, String profileName, List<Interval> own, List<Interval> others) {
        var landmark = sign.landmark();
        var usual = Usual.of(landmark, profile, others);
        var history = own.stream()
                .filter(interval -> interval.from().landmark().sameScale(landmark) && interval.credible(profile))
                .toList();
        var mean = OwnMean.of(usual, history, profile);
        double expectedDays = mean.meanDays() + landmark.daysAhead(profile);
        double spreadDays = Math.sqrt(mean.spreadDays() * mean.spreadDays()
                + usual.spreadWithinFemale() * usual.spreadWithinFemale()
                + sign.variance());
        var ninety = DaySpan.around(sign.on(), expectedDays, spreadDays, NINE_TENTHS);
        var likely = history.isEmpty() && !usual.isOfThePopulation() && landmark != Landmark.LAYING
                ? usualDays(sign, profile)
                : ninety;
        double usualDays = usual.meanDays() + landmark.daysAhead(profile);
        return new DueWindow(
                sign,
                day(sign, expectedDays),
                expectedDays,
                spreadDays,
                mean,
                DaySpan.around(sign.on(), expectedDays, spreadDays, HALF),
                ninety,
                likely,
                earliest(sign, profile, ninety),
                overdue(sign, profile, ninety),
                history.isEmpty() ? null : day(sign, usualDays),
                reason(sign, profileName, usual, history, expectedDays, usualDays));
    }

    private static LocalDate day(Landmark.Noted sign, double days) {
        return sign.on().plusDays(Math.round(days));
    }

    private static DaySpan usualDays(Landmark.Noted sign, Gestation profile) {
        return sign.landmark() == Landmark.OVULATION
                ? new DaySpan(
                        sign.on().plusDays(profile.daysFromOvulationToBirthAtLeast()),
                        sign.on().plusDays(profile.daysFromOvulationToBirthAtMost()))
                : new DaySpan(
                        sign.on().plusDays(profile.daysFromShedToBirthAtLeast()),
                        sign.on().plusDays(profile.daysFromShedToBirthAtMost()));
    }

    /** The profile's day, or the first of the ninety per cent where that is sooner. */
    private static LocalDate earliest(Landmark.Noted sign, Gestation profile, DaySpan ninety) {
        if (sign.landmark() == Landmark.LAYING) {
            return ninety.fromOn();
        }
        var usual = sign.on()
                .plusDays(
                        profile.daysFromShedToBirthEarliest() + sign.landmark().daysAhead(profile));
        return usual.isBefore(ninety.fromOn()) ? usual : ninety.fromOn();
    }

    /** The profile's day, or the day after the ninety per cent where that is later. */
    private static LocalDate overdue(Landmark.Noted sign, Gestation profile, DaySpan ninety) {
        var after = ninety.untilOn().plusDays(1);
        if (sign.landmark() == Landmark.LAYING) {
            return after;
        }
        var usual = sign.landmark() == Landmark.OVULATION
                ? usualDays(sign, profile).untilOn().plusDays(1)
                : sign.on().plusDays(profile.daysFromShedToBirthOverdue());
        return usual.isAfter(after) ? usual : after;
    }

    // ── the reason, in words ─────────────────────────────────────────────────────────────────────────────────────────

    private static String reason(
            Landmark.Noted sign,
            String profileName,
            Usual usual,
            List<Interval> history,
            double expectedDays,
            double usualDays) {
        var reason = new StringBuilder("%d days after the %s; "
                .formatted(Math.round(expectedDays), sign.landmark().word()));
        reason.append(
                usual.isOfThePopulation()
                        ? "usual are %d, estimated from %d intervals of %d females of this population"
                                .formatted(Math.round(usualDays), usual.intervals(), usual.females())
                        : "profile %s".formatted(profileName));
        if (history.isEmpty()) {
            reason.append(".");
        } else {
            reason.append(", weighed with her own earlier %s (%s days). Without her history: %s."
                    .formatted(
                            history.size() == 1 ? "litter" : history.size() + " litters",
                            history.stream().map(DueWindow::told).collect(Collectors.joining(", ")),
                            DAY.format(day(sign, usualDays))));
        }
        return reason.append(doubt(sign)).toString();
    }

    private static String told(Interval interval) {
        return interval.days() + (interval.from().landmark() == Landmark.OVULATION ? " from the ovulation" : "");
    }

    private static String doubt(Landmark.Noted sign) {
        var doubt = sign.landmark() == Landmark.OVULATION
                ? " No shed after it is noted: it follows two to three weeks after the ovulation, and a swelling is noticed within a week, so the window is wider."
                : "";
        return doubt
                + switch (sign.howKnown()) {
                    case SEEN -> "";
                    case SKIN_FOUND ->
                        " The skin was found and may have lain there for up to a week, so the window is a little wider.";
                    case GUESSED ->
                        " The day of the %s was guessed and may be two weeks off, so the window is wider."
                                .formatted(sign.landmark().word());
                };
    }
}
