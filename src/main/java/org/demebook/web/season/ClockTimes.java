package org.demebook.web.season;

import io.quarkus.qute.TemplateExtension;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;

/** Writes the time of day, to tell apart what was begun on one day. In templates {@code clock:time}. */
@TemplateExtension(namespace = "clock")
final class ClockTimes {
    private static final DateTimeFormatter HOURS = DateTimeFormatter.ofPattern("HH:mm");

    private ClockTimes() {}

    static String time(Instant moment) {
        return LocalTime.ofInstant(moment, ZoneId.systemDefault()).format(HOURS);
    }
}
