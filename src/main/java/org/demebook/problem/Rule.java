package org.demebook.problem;

import static org.demebook.problem.Finding.Level.BLOCK;
import static org.demebook.problem.Finding.Level.ERROR;
import static org.demebook.problem.Finding.Level.NOTICE;
import static org.demebook.problem.Finding.Level.WARNING;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.demebook.problem.Finding.Level;

/**
 * The catalogue of what may be wrong with the records of a studbook: each rule with the heaviest level that a finding of
 * it has, and why it matters. In JSON a word such as {@code dam-too-young}. Common practice of the trade, no source, where
 * none is named.
 */
public enum Rule {
    // parents and their young
    OWN_ANCESTOR(ERROR, "Every figure of kinship is computed from parents to young; in a loop there is no first."),
    DAM_NOT_FEMALE(
            BLOCK, "A male has borne nothing: either its sex or the parentage is wrong, and both count in plans."),
    SIRE_NOT_MALE(
            BLOCK, "A female has sired nothing: either its sex or the parentage is wrong, and both count in plans."),
    BORN_BEFORE_PARENT(
            BLOCK, "Nothing is older than its parents: a date or a parent is wrong, and every descendant with it."),
    DAM_TOO_YOUNG(BLOCK, "So young a dam is more often a mistyped year or a sister of the dam than a birth."),
    DAM_YOUNG(WARNING, "Few females bear so young; a wrong year is as likely."),
    SIRE_TOO_YOUNG(BLOCK, "So young a sire is more often a mistyped year or another male than the sire."),
    PARENT_OLD(WARNING, "Few breed at that age; often a number was given to a second animal, or a year is wrong."),
    DAM_DIED_BEFORE_BIRTH(
            BLOCK, "A dam lives at the birth, unless the young were taken from her: a date or the dam is wrong."),
    /** Levine, Schuett &amp; Booth (2021), PLoS ONE 16: e0252049. */
    STORED_SPERM(
            WARNING, "Females store sperm, but the longer the gap, the likelier another male; kinship hangs on it."),
    FOUNDER_WITH_PARENTS(
            BLOCK, "A founder brings genes that no other has; one with parents here would be counted twice."),
    LOCALITY_MIXED(WARNING, "Young of two localities are of neither, and what is bred from them is never pure again."),
    LOCALITY_SURER_THAN_PARENT(
            WARNING, "A bred animal's locality rests on its founders': it is known no better than its parents'."),
    LOOKS_LIKE_ANOTHER(WARNING, "One animal under two numbers is counted twice, unless they are twins."),

    // a litter
    BORN_BEFORE_PAIRING(WARNING, "Young are conceived in a pairing, or with sperm stored from an earlier one."),
    GESTATION_OUT_OF_RANGE(
            WARNING, "So far from the usual time, a shed was often mistaken for another, or a date is wrong."),
    BORN_BEFORE_SHED(
            BLOCK, "The shed after ovulation comes before the birth of that cycle: one of the dates is wrong."),
    LITTERS_TOO_CLOSE(BLOCK, "No female bears twice in that time: it is often one litter that was recorded twice."),
    LITTERS_CLOSE(WARNING, "Few females bear again so soon; the date, or the dam, may be another."),
    LITTER_DOES_NOT_ADD_UP(ERROR, "What was found is the sum of its classes; a missing one changes every rate."),
    MORE_YOUNG_THAN_LIVE_BORN(WARNING, "A young that was not counted as live-born may belong to another litter."),
    MORE_YOUNG_THAN_FOUND(BLOCK, "A litter has no more young than were found in it; one may belong to another litter."),
    LITTERMATES_BORN_APART(WARNING, "Young of one litter are born within days; further apart they are two litters."),
    LITTER_SIZE_UNUSUAL(NOTICE, "Unusual counts happen, and are also how mistyped ones look."),
    MEASURE_UNIT(
            WARNING, "A mass or length so far from the usual is often in another unit, and bends the growth curve."),
    PARTHENOGENESIS_SUSPECTED(WARNING, "Young without a sire carry the dam's genes alone; a DNA test tells."),
    TWO_MALES_AT_ONCE(NOTICE, "With two males at a time, each young may be of either; kinship counts with both."),
    SIGN_NOTED_TWICE(
            WARNING,
            "There is one ovulation, and one shed after it, in a cycle; from the wrong one the due day is wrong."),
    LAYING_OF_LIVE_BEARER(
            WARNING, "A female that bears her young has no clutch to incubate; ova that came are a litter."),
    QUARANTINE_AFTER_PAIRING(WARNING, "An animal that is paired in quarantine puts the other, and its young, at risk."),

    // one animal
    DIED_BEFORE_BIRTH(ERROR, "Nothing dies before it is born: ages and counts need the right day."),
    TWO_DEATHS(BLOCK, "An animal dies once: with two days, two animals may stand under one number."),
    EVENT_AFTER_DEATH(WARNING, "What happened after a death happened to another animal, or the death is wrong."),
    EVENT_BEFORE_BIRTH(
            WARNING, "What happened before a birth happened to another animal, or one of the days is wrong."),
    MASS_LOST(WARNING, "A loss of a fifth is a mass in another unit, another animal on the scales, or an illness."),
    MEAL_BEFORE_SHED(
            NOTICE, "Young seldom feed before their first shed; one that was not written down is missing later."),
    SEX_CHANGED(
            WARNING,
            "A sex that changes puts every pairing made with it in doubt; an animal may be confused with another."),
    TRANSPONDER_TAKEN(
            BLOCK, "A transponder is in one animal: with two, one was misread, or one animal has two numbers."),
    TRANSPONDER_NEIGHBOUR(
            WARNING, "Transponder numbers have no check digit, so that a slip of one digit names another animal."),
    DATE_IN_FUTURE(ERROR, "What is recorded has happened."),
    DATE_PLACEHOLDER(
            WARNING, "Programs write the first of January 1900 where nothing is known, and ages are computed from it."),
    DAY_MONTH_SWAPPED(WARNING, "Day and month are easily swapped between countries; every check of ages uses the day."),
    YEAR_ONLY(WARNING, "With the year alone, every check takes any day of that year; less is found."),
    GRAVID_TRANSFER(BLOCK, "A journey late in gravidity is hard on the dam and her young."),
    IN_TWO_PLACES(WARNING, "An animal is in one place: until it is known in which, it counts for no keeper.");

    private final Level grade;
    private final String why;

    Rule(Level grade, String why) {
        this.grade = grade;
        this.why = why;
    }

    /** The heaviest level that a finding of this rule has. */
    public Level grade() {
        return grade;
    }

    /** Why it matters: one sentence. */
    public String why() {
        return why;
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<Rule> of(String word) {
        return Arrays.stream(values()).filter(rule -> rule.word().equals(word)).findFirst();
    }

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    static Rule parse(String word) {
        return of(word).orElseThrow(() -> new IllegalArgumentException("There is no rule called " + word));
    }
}
