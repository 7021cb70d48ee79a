package org.demebook.rearing;

import java.math.BigDecimal;
import java.time.LocalDate;
import org.demebook.diary.CareRecord;
import org.demebook.diary.CareRecord.HealthNote;
import org.demebook.diary.CareRecord.HealthTest;
import org.demebook.diary.CareRecord.Meal;
import org.demebook.diary.CareRecord.Measures;
import org.demebook.diary.CareRecord.Move;
import org.demebook.diary.CareRecord.Quarantine;
import org.demebook.diary.CareRecord.Shed;
import org.demebook.notation.Mass;

/** Care records in few words. */
final class Entries {
    private Entries() {}

    static LocalDate day(String day) {
        return LocalDate.parse(day);
    }

    static CareRecord shed(String on) {
        return new Shed(day(on), true);
    }

    static CareRecord taken(String on) {
        return meal(on, Meal.Outcome.TAKEN);
    }

    static CareRecord assisted(String on) {
        return meal(on, Meal.Outcome.ASSISTED);
    }

    static CareRecord refused(String on) {
        return meal(on, Meal.Outcome.REFUSED);
    }

    private static CareRecord meal(String on, Meal.Outcome outcome) {
        return new Meal(day(on), outcome, "pinkie mouse", null);
    }

    static CareRecord mass(String on, String grams) {
        return new Measures(day(on), Mass.of(new BigDecimal(grams), Mass.Unit.G), null, null);
    }

    static CareRecord moved(String on) {
        return new Move(day(on), "tub 7");
    }

    static CareRecord note(String on) {
        return new HealthNote(day(on), "wheezes", null);
    }

    static CareRecord closedNote(String on, String endedOn) {
        return new HealthNote(day(on), "mites", day(endedOn));
    }

    static CareRecord quarantine(String from, String until) {
        return new Quarantine(day(from), until == null ? null : day(until), null);
    }

    static CareRecord test(String on, String agent, HealthTest.Result result) {
        return new HealthTest(day(on), agent, "RT-PCR", "swab", result, null, null);
    }
}
