package org.demebook.calendar;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.anonymous;
import static org.demebook.Colony.as;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.io.StringReader;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.component.VEvent;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/**
 * Scenario A1, from the shed to the calendar: 105 days after the shed a birth is expected, from day 100 to day 120 it is
 * likely, and there are three reminders on days 90, 100 and 121. Common practice, no source.
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class BirthInTheCalendarTest {
    private static final String KEEPER = "keeper-of-013";
    private static final LocalDate SHED_ON = LocalDate.now(ZoneOffset.UTC).minusDays(14);

    @Test
    void a_shed_that_is_noted_puts_the_due_window_and_three_reminders_into_the_calendar() {
        var colony = Colony.found();
        Colony.token(KEEPER);
        colony.post(WREN, "/members", Map.of("name", KEEPER, "role", "member")).statusCode(200);
        colony.post(KEEPER, "/collections", Map.of("label", "racks")).statusCode(201);
        var female = colony.female(KEEPER);
        colony.post(
                        KEEPER,
                        "/animals/" + female + "/breeding-signs",
                        Map.of(
                                "kind",
                                "post-ovulation-shed",
                                "happenedOn",
                                SHED_ON.toString(),
                                "howKnown",
                                "skin-found"))
                .statusCode(201);

        String address = as(KEEPER)
                .body("{}")
                .post("/api/v1/calendar")
                .then()
                .statusCode(200)
                .extract()
                .path("address");
        var events =
                events(anonymous().get(address).then().statusCode(200).extract().asString());

        assertThat(events)
                .extracting(
                        event -> value(event, "CATEGORIES"),
                        event -> value(event, "DTSTART"),
                        event -> value(event, "DTEND"))
                .containsExactlyInAnyOrder(
                        tuple("due-window", day(100), day(121)),
                        tuple("early-birth", day(90), day(91)),
                        tuple("birth-likely", day(100), day(101)),
                        tuple("birth-overdue", day(121), day(122)));
        assertThat(events)
                .allSatisfy(event -> assertThat(value(event, "SUMMARY")).startsWith(female + ": "))
                .filteredOn(event -> value(event, "CATEGORIES").equals("due-window"))
                .allSatisfy(window -> {
                    assertThat(value(window, "SUMMARY"))
                            .endsWith(", expected " + Feed.DAY.format(SHED_ON.plusDays(105)));
                    assertThat(value(window, "DESCRIPTION")).startsWith("105 days after the shed");
                });
    }

    private static String day(int afterShed) {
        return DateTimeFormatter.BASIC_ISO_DATE.format(SHED_ON.plusDays(afterShed));
    }

    private static String value(VEvent event, String property) {
        return event.getProperty(property).orElseThrow().getValue();
    }

    private static List<VEvent> events(String text) {
        try {
            return new CalendarBuilder().build(new StringReader(text)).getComponents("VEVENT");
        } catch (IOException | ParserException e) {
            throw new AssertionError(text, e);
        }
    }
}
