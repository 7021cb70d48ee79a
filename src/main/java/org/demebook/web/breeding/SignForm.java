package org.demebook.web.breeding;

import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;

/** The form of a breeding sign: a day and, of labour, a time of that day, which together are a moment. */
final class SignForm {
    /** The field that is no part of the body. */
    static final String TIME = "time";

    private static final String MOMENT = "happenedAt";

    private SignForm() {}

    /** The form as the body of the API. What is no time of day is left as the moment, which tells that it cannot be read. */
    static MultivaluedMap<String, String> body(MultivaluedMap<String, String> form, ZoneId zone) {
        var body = new MultivaluedHashMap<String, String>();
        body.putAll(form);
        var time = form.getFirst(TIME);
        var day = form.getFirst("happenedOn");
        if (time != null && !time.isBlank() && day != null) {
            try {
                var moment = LocalDate.parse(day.strip()).atTime(LocalTime.parse(time.strip()));
                body.putSingle(MOMENT, moment.atZone(zone).toInstant().toString());
            } catch (DateTimeException e) {
                body.putSingle(MOMENT, time);
            }
        }
        return body;
    }

    /** The time of day of a moment, as the field has it. */
    static String time(java.time.Instant moment, ZoneId zone) {
        return LocalTime.ofInstant(moment, zone).withSecond(0).withNano(0).toString();
    }
}
