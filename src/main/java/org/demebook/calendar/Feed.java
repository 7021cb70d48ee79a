package org.demebook.calendar;

import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.io.text.ICalWriter;
import biweekly.property.Classification;
import biweekly.property.DateEnd;
import biweekly.property.DateStart;
import biweekly.property.Transparency;
import biweekly.util.DateTimeComponents;
import biweekly.util.Duration;
import biweekly.util.ICalDate;
import com.fasterxml.uuid.Generators;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Date;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.demebook.care.CareKind;
import org.demebook.care.CareTaskView;

/**
 * Tasks as an iCalendar object: each a whole day, a due window a span of days, with the expected one in its summary.
 *
 * <p>Source: RFC 5545 (iCalendar); RFC 7986, 5.7 (REFRESH-INTERVAL). X-PUBLISHED-TTL and X-WR-CALNAME are what programs
 * older than that read. There is no METHOD: PUBLISH would want an organizer (RFC 5546, 3.2.1), who would be a person.
 *
 * @param writtenAt the DTSTAMP of every event: it is derived anew at each reading, so it was last revised then (RFC 5545,
 *     3.8.7.2)
 */
record Feed(List<Entry> entries, Instant writtenAt) {
    private static final String NAME = "Demebook";
    private static final Duration READ_AGAIN = Duration.builder().hours(6).build();
    private static final int MOST_OCTETS = 75;
    static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

    /** A task and the population that it is of. */
    record Entry(UUID populationId, CareTaskView task) {}

    String text() {
        var calendar = new ICalendar();
        calendar.setProductId("-//Demebook//Care//EN");
        calendar.setName(NAME);
        calendar.addExperimentalProperty("X-WR-CALNAME", NAME);
        calendar.setRefreshInterval(READ_AGAIN).setParameter("VALUE", "DURATION"); // which the library leaves out
        calendar.addExperimentalProperty("X-PUBLISHED-TTL", READ_AGAIN.toString());
        entries.forEach(entry -> calendar.addEvent(event(entry)));
        return folded(unfolded(calendar));
    }

    private VEvent event(Entry entry) {
        var task = entry.task();
        var window = task.kind() == CareKind.DUE_WINDOW && task.fromOn() != null && task.untilOn() != null;
        var firstOn = window ? task.fromOn() : task.dueOn();
        var lastOn = window ? task.untilOn() : task.dueOn();
        var event = new VEvent();
        event.setUid(uid(entry).toString());
        event.setDateTimeStamp(Date.from(writtenAt.truncatedTo(ChronoUnit.SECONDS)));
        event.setDateStart(new DateStart(wholeDay(firstOn)));
        event.setDateEnd(new DateEnd(wholeDay(lastOn.plusDays(1)))); // the first day after it
        event.setSummary(summary(task, window));
        event.setDescription(description(task));
        event.setSequence(task.timesMoved());
        event.setClassification(Classification.private_());
        event.setTransparency(Transparency.transparent());
        event.addCategories(task.kind().word());
        return event;
    }

    /** The same at every reading and for every keeper who sees the task (RFC 9562, version 5). */
    private static UUID uid(Entry entry) {
        return Generators.nameBasedGenerator(entry.populationId())
                .generate(entry.task().key());
    }

    private static ICalDate wholeDay(LocalDate day) {
        return new ICalDate(new DateTimeComponents(day.getYear(), day.getMonthValue(), day.getDayOfMonth()), false);
    }

    private static String summary(CareTaskView task, boolean window) {
        var about = task.animal() == null ? "" : task.animal() + ": ";
        return about + task.what() + (window ? ", expected " + DAY.format(task.dueOn()) : "");
    }

    private static String description(CareTaskView task) {
        var text = new StringBuilder(task.why());
        if (task.fromOn() != null && task.untilOn() != null) {
            text.append("\nFrom ")
                    .append(DAY.format(task.fromOn()))
                    .append(" to ")
                    .append(DAY.format(task.untilOn()))
                    .append('.');
        }
        if (task.movedFrom() != null) {
            text.append("\nMoved from ").append(DAY.format(task.movedFrom())).append('.');
        }
        return text.toString();
    }

    private static String unfolded(ICalendar calendar) {
        var text = new StringWriter();
        try (var writer = new ICalWriter(text, ICalVersion.V2_0)) {
            writer.getVObjectWriter().getFoldedLineWriter().setLineLength(null);
            writer.write(calendar);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    // by octets, as RFC 5545, 3.1, counts; the library counts characters, which is more than 75 octets beyond ASCII
    private static String folded(String text) {
        var folded = new StringBuilder(text.length() + text.length() / 50);
        int octets = 0;
        for (int i = 0; i < text.length(); ) {
            int codePoint = text.codePointAt(i);
            var character = Character.toString(codePoint);
            int length = character.getBytes(StandardCharsets.UTF_8).length;
            var lineEnds = codePoint == '\r' || codePoint == '\n';
            if (!lineEnds && octets + length > MOST_OCTETS) {
                folded.append("\r\n ");
                octets = 1;
            }
            folded.append(character);
            octets = lineEnds ? 0 : octets + length;
            i += character.length();
        }
        return folded.toString();
    }
}
