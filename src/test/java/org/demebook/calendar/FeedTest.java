package org.demebook.calendar;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.VEvent;
import org.demebook.care.CareKind;
import org.demebook.care.CareTaskView;
import org.junit.jupiter.api.Test;

/** A calendar as another library reads it (ical4j), and as RFC 5545 says that it has to be. */
class FeedTest {
    private static final UUID POPULATION = UUID.fromString("01890a5d-ac96-774b-bcce-b302099a8057");
    private static final Instant NOW = Instant.parse("2026-03-15T06:07:08.9Z");

    // scenario: POS on 14 March 2026; the days as they are given there
    private static final List<CareTaskView> DUE = List.of(
            task("due", CareKind.DUE_WINDOW, "birth likely", "2026-06-27", "2026-06-22", "2026-07-12", 0),
            task("early", CareKind.EARLY_BIRTH, "an early birth is possible", "2026-06-12", null, null, 0),
            task("likely", CareKind.BIRTH_LIKELY, "birth likely from today", "2026-06-22", null, null, 0),
            task("overdue", CareKind.BIRTH_OVERDUE, "birth overdue", "2026-07-13", null, null, 0));

    @Test
    void a_due_window_is_a_span_of_days_with_the_expected_day_in_its_summary() {
        var window = event(DUE, 0);
        assertThat(value(window, "SUMMARY")).isEqualTo("M-H-13-4: birth likely, expected 27 June 2026");
        assertThat(value(window, "DTSTART")).isEqualTo("20260622");
        // exclusive: the first day after the window (RFC 5545, 3.6.1)
        assertThat(value(window, "DTEND")).isEqualTo("20260713");
    }

    @Test
    void the_three_reminders_of_a_birth_are_days_of_their_own() {
        assertThat(events(DUE).subList(1, 4))
                .extracting(event -> value(event, "DTSTART") + "/" + value(event, "DTEND"))
                .containsExactly("20260612/20260613", "20260622/20260623", "20260713/20260714");
    }

    @Test
    void every_event_is_a_whole_day_private_and_takes_no_time() {
        assertThat(events(DUE)).hasSize(4).allSatisfy(event -> {
            for (var bound : List.of("DTSTART", "DTEND")) {
                assertThat(event.getProperty(bound).orElseThrow().getParameter("VALUE"))
                        .hasValueSatisfying(form -> assertThat(form.getValue()).isEqualTo("DATE"));
            }
            assertThat(value(event, "CLASS")).isEqualTo("PRIVATE");
            assertThat(value(event, "TRANSP")).isEqualTo("TRANSPARENT");
            assertThat(value(event, "DTSTAMP")).as("UTC, RFC 5545, 3.8.7.2").isEqualTo("20260315T060708Z");
        });
    }

    @Test
    void the_calendar_is_valid_and_names_what_rfc_5545_requires() {
        var calendar = calendar(DUE);
        assertThat(calendar.validate().hasErrors())
                .as("%s", calendar.validate().getEntries())
                .isFalse();
        // RFC 5545, 3.6: PRODID and VERSION; 3.6.1: UID and DTSTAMP, each once
        for (var name : List.of("PRODID", "VERSION")) {
            assertThat(calendar.getProperties(name)).as(name).hasSize(1);
        }
        assertThat(events(DUE)).allSatisfy(event -> {
            for (var name : List.of("UID", "DTSTAMP", "DTSTART", "SUMMARY", "SEQUENCE", "CLASS", "TRANSP")) {
                assertThat(event.getProperties(name)).as(name).hasSize(1);
            }
        });
        assertThat(text(DUE)).contains("\r\nREFRESH-INTERVAL;VALUE=DURATION:PT6H\r\n", "\r\nX-PUBLISHED-TTL:PT6H\r\n");
    }

    @Test
    void lines_end_with_crlf_and_have_at_most_75_octets_whatever_the_script() {
        // RFC 5545, 3.1
        var words = "zvážit mláďata — 体重を量る 🐍 ".repeat(12).strip();
        var text = text(List.of(own("a", words, 0), own("b", "x".repeat(400), 0)));
        assertThat(text).endsWith("END:VCALENDAR\r\n");
        assertThat(text.replace("\r\n", "")).doesNotContain("\n", "\r");
        assertThat(Arrays.stream(text.split("\r\n")))
                .allSatisfy(line ->
                        assertThat(line.getBytes(StandardCharsets.UTF_8)).hasSizeLessThanOrEqualTo(75))
                .anySatisfy(line ->
                        assertThat(line.getBytes(StandardCharsets.UTF_8)).hasSize(75));
        assertThat(value(event(List.of(own("a", words, 0)), 0), "SUMMARY")).isEqualTo(words);
    }

    @Test
    void what_a_keeper_wrote_reads_back_whatever_it_holds() {
        var words = "mice; 2, then \\ water: \"warm\"\nEND:VEVENT";
        assertThat(value(event(List.of(own("a", words, 0)), 0), "SUMMARY")).isEqualTo(words);
        assertThat(events(List.of(own("a", words, 0)))).hasSize(1);
    }

    @Test
    void a_task_has_one_uid_at_every_reading_and_no_other_task_has_it() {
        var first = events(DUE).stream().map(event -> value(event, "UID")).toList();
        var later = new Feed(entries(DUE), NOW.plusSeconds(86_400)).text();
        assertThat(first).doesNotHaveDuplicates();
        assertThat(parsed(later).<VEvent>getComponents("VEVENT").stream().map(event -> value(event, "UID")))
                .containsExactlyElementsOf(first);
        var elsewhere = new Feed(List.of(new Feed.Entry(UUID.randomUUID(), DUE.get(0))), NOW).text();
        assertThat(elsewhere).doesNotContain(first.get(0));
        // a version 5 UUID, as RFC 9562, 5.5, forms it of a namespace and a name; computed apart from this code
        assertThat(first.get(0)).isEqualTo(UID_OF_DUE);
    }

    private static final String UID_OF_DUE = "8596910a-78f5-5e0f-a84e-8d5b44b4810d";

    @Test
    void a_task_that_was_moved_has_a_higher_sequence() {
        assertThat(value(event(List.of(own("a", "weigh", 0)), 0), "SEQUENCE")).isEqualTo("0");
        assertThat(value(event(List.of(own("a", "weigh", 3)), 0), "SEQUENCE")).isEqualTo("3");
    }

    @Test
    void nobody_and_no_place_is_named() {
        assertThat(events(DUE)).allSatisfy(event -> {
            for (var name : List.of("ORGANIZER", "ATTENDEE", "CONTACT", "LOCATION", "GEO", "URL")) {
                assertThat(event.getProperties(name)).as(name).isEmpty();
            }
        });
    }

    @Test
    void a_calendar_without_a_task_is_empty() {
        // RFC 5545 wants a component in a calendar (3.6); programs take an empty one, and there is nothing to tell
        assertThat(events(List.of())).isEmpty();
    }

    private static CareTaskView own(String key, String what, int timesMoved) {
        return new CareTaskView(
                key,
                CareKind.OWN,
                null,
                null,
                POPULATION,
                LocalDate.parse("2026-04-01"),
                null,
                null,
                0,
                what,
                "Your own task.",
                timesMoved > 0 ? LocalDate.parse("2026-03-30") : null,
                timesMoved,
                null,
                null,
                null);
    }

    private static CareTaskView task(
            String key, CareKind kind, String what, String dueOn, String fromOn, String untilOn, int timesMoved) {
        return new CareTaskView(
                key,
                kind,
                "M-H-13-4",
                null,
                POPULATION,
                LocalDate.parse(dueOn),
                fromOn == null ? null : LocalDate.parse(fromOn),
                untilOn == null ? null : LocalDate.parse(untilOn),
                0,
                what,
                "105 days after the shed; profile Marrowfin.",
                null,
                timesMoved,
                null,
                null,
                null);
    }

    private static String text(List<CareTaskView> tasks) {
        return new Feed(entries(tasks), NOW).text();
    }

    private static List<Feed.Entry> entries(List<CareTaskView> tasks) {
        return tasks.stream().map(task -> new Feed.Entry(POPULATION, task)).toList();
    }

    private static Calendar calendar(List<CareTaskView> tasks) {
        return parsed(text(tasks));
    }

    private static List<VEvent> events(List<CareTaskView> tasks) {
        return calendar(tasks).getComponents("VEVENT");
    }

    private static VEvent event(List<CareTaskView> tasks, int index) {
        return events(tasks).get(index);
    }

    private static String value(VEvent event, String property) {
        return event.getProperty(property).orElseThrow().getValue();
    }

    private static Calendar parsed(String text) {
        try {
            return new CalendarBuilder().build(new StringReader(text));
        } catch (IOException | ParserException e) {
            throw new AssertionError(text, e);
        }
    }
}
