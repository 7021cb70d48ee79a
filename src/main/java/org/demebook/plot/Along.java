package org.demebook.plot;

import java.time.LocalDate;
import java.util.List;

/** What a course is followed along: numbers such as years or days of age, or days of the calendar. */
public sealed interface Along {
    /** What stands below the axis and above the table's first column. */
    String name();

    String write(double at);

    /** At most so many ticks from one value to another, at round places within them. */
    List<Tick> ticks(double from, double to, int atMost);

    /** Whole numbers: years, days of age, seasons. */
    record Whole(String name, Numbers numbers) implements Along {
        @Override
        public String write(double at) {
            return numbers.write(at, at == Math.rint(at) ? 0 : 1);
        }

        @Override
        public List<Tick> ticks(double from, double to, int atMost) {
            return Ticks.within(from, to, atMost, 0, numbers);
        }
    }

    /** Days, as {@link LocalDate#toEpochDay()}. */
    record Days(String name, Dates dates) implements Along {
        @Override
        public String write(double at) {
            return dates.day().apply(LocalDate.ofEpochDay((long) at));
        }

        @Override
        public List<Tick> ticks(double from, double to, int atMost) {
            return DayTicks.within(LocalDate.ofEpochDay((long) from), LocalDate.ofEpochDay((long) to), atMost, dates);
        }
    }
}
