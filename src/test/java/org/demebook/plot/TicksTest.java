package org.demebook.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

class TicksTest {
    private static final Numbers NUMBERS = Numbers.of(Locale.ENGLISH);

    /** The two examples of Heckbert, Graphics Gems (1990), p. 61, with his five ticks. */
    @Test
    void the_examples_of_the_source_come_out() {
        assertThat(labels(Ticks.around(105, 543, 5, 6, NUMBERS)))
                .containsExactly("100", "200", "300", "400", "500", "600");
        assertThat(labels(Ticks.around(2.04, 2.16, 5, 6, NUMBERS)))
                .containsExactly("2.00", "2.05", "2.10", "2.15", "2.20");
    }

    @Test
    void an_axis_encloses_its_values_in_steps_of_one_two_or_five() {
        var random = new Random(1);
        for (int run = 0; run < 10_000; run++) {
            double low = random.nextGaussian() * Math.pow(10, random.nextInt(12) - 4);
            double high = low + random.nextDouble() * Math.pow(10, random.nextInt(12) - 4);
            var ticks = Ticks.around(low, high, 5, 9, NUMBERS);
            var told = "run " + run + ": " + low + " to " + high + ": " + ticks;
            double step = ticks.get(1).at() - ticks.get(0).at();
            assertThat(ticks.get(0).at()).as(told).isLessThanOrEqualTo(low + step * 1e-6);
            assertThat(ticks.get(ticks.size() - 1).at()).as(told).isGreaterThanOrEqualTo(high - step * 1e-6);
            assertThat(ticks).as(told).hasSizeBetween(2, 8);
            if (high - low > 1e-5 * Math.abs(low)) {
                double mantissa = step / Math.pow(10, Math.floor(Math.log10(step) + 1e-6));
                assertThat(Math.rint(mantissa)).as(told).isIn(1.0, 2.0, 5.0).isEqualTo(mantissa, within(1e-2));
            }
        }
    }

    @Test
    void counts_have_no_ticks_between_them() {
        assertThat(labels(Ticks.around(0, 2, 5, 0, NUMBERS))).containsExactly("0", "1", "2");
        assertThat(labels(Ticks.around(0, 1, 5, 0, NUMBERS))).containsExactly("0", "1");
    }

    @Test
    void equal_values_have_an_axis_around_them() {
        assertThat(labels(Ticks.around(0, 0, 5, 0, NUMBERS))).containsExactly("0", "1");
        assertThat(labels(Ticks.around(7, 7, 5, 0, NUMBERS))).containsExactly("6", "7", "8");
        assertThat(labels(Ticks.around(.9423, .9423, 5, 4, NUMBERS))).containsExactly("0.9422", "0.9423", "0.9424");
        for (double value : new double[] {-3, .94235, 1e12, -1e17, 1e-12, .1 + .2}) {
            var ticks = Ticks.around(value, value, 5, 2, NUMBERS);
            assertThat(ticks.get(0).at()).isLessThanOrEqualTo(value);
            assertThat(ticks.get(ticks.size() - 1).at()).isGreaterThanOrEqualTo(value);
            assertThat(ticks).as(value + ": " + ticks).hasSizeBetween(2, 4);
        }
    }

    @Test
    void ticks_within_bounds_are_no_more_than_asked_for() {
        var random = new Random(2);
        for (int run = 0; run < 10_000; run++) {
            double low = random.nextInt(4000) - 2000;
            double high = low + random.nextInt(3000);
            int atMost = 1 + random.nextInt(12);
            var ticks = Ticks.within(low, high, atMost, 0, NUMBERS);
            assertThat(ticks).as("run " + run).hasSizeLessThanOrEqualTo(atMost).allSatisfy(tick -> assertThat(tick.at())
                    .isBetween(low, high));
        }
    }

    @Test
    void a_calendar_has_ticks_on_days_months_or_years() {
        assertThat(days("2026-03-28", "2026-04-03", 10)).hasSize(7).startsWith("28 Mar 2026");
        assertThat(days("2026-01-15", "2026-12-20", 12))
                .hasSize(11)
                .startsWith("Feb 2026")
                .endsWith("Dec 2026");
        assertThat(days("2025-11-02", "2027-02-20", 6))
                .containsExactly("Jan 2026", "Apr 2026", "Jul 2026", "Oct 2026", "Jan 2027");
        assertThat(days("2011-05-01", "2026-11-28", 4)).containsExactly("2015", "2020", "2025");
    }

    @Test
    void ticks_of_a_calendar_lie_within_it_and_are_no_more_than_asked_for() {
        var random = new Random(3);
        for (int run = 0; run < 10_000; run++) {
            var from = LocalDate.of(1990, 1, 1).plusDays(random.nextInt(15_000));
            var to = from.plusDays(random.nextInt(1 + random.nextInt(20_000)));
            int atMost = 1 + random.nextInt(12);
            var ticks = DayTicks.within(from, to, atMost, Dates.of(Locale.ENGLISH));
            assertThat(ticks).as("run " + run + ", " + from + " to " + to).hasSizeLessThanOrEqualTo(atMost);
            assertThat(ticks).allSatisfy(tick -> assertThat(LocalDate.ofEpochDay((long) tick.at()))
                    .isBetween(from, to));
            if (atMost >= 4) {
                assertThat(ticks).as("run " + run + ", " + from + " to " + to).isNotEmpty();
            }
        }
    }

    private static List<String> days(String from, String to, int atMost) {
        return labels(DayTicks.within(LocalDate.parse(from), LocalDate.parse(to), atMost, Dates.of(Locale.UK)));
    }

    private static List<String> labels(List<Tick> ticks) {
        return ticks.stream().map(Tick::label).toList();
    }
}
