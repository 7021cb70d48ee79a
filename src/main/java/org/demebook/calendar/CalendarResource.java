package org.demebook.calendar;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

@Path("/api/v1/calendar")
@Authenticated
@Tag(name = "Care")
class CalendarResource {
    @Inject
    SignedIn signedIn;

    @Inject
    Calendars calendars;

    @Inject
    Once once;

    @GET
    @Operation(operationId = "getCalendar", summary = "Since when your calendar has its address")
    @Refuses
    public CalendarView calendar() {
        return calendars.get(signedIn.asker());
    }

    @POST
    @Operation(
            operationId = "openCalendar",
            summary = "Make the secret address of your calendar, or a new one in place of the one before")
    @APIResponse(
            responseCode = "200",
            description = "The address, shown this once",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CalendarView.class)))
    @Refuses
    public Response open() {
        var by = signedIn.asker();
        return once.answer(
                by.keeperId(), null, () -> Answer.ok(null, calendars.open(by)).shownOnce());
    }

    @POST
    @Path("closure")
    @Operation(operationId = "closeCalendar", summary = "End the address of your calendar")
    @APIResponse(responseCode = "204", description = "The address leads nowhere from now on")
    @Refuses
    public Response close() {
        var by = signedIn.asker();
        return once.answer(by.keeperId(), null, () -> {
            calendars.close(by);
            return Answer.done();
        });
    }
}
