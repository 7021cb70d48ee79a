package org.demebook.calendar;

import static org.demebook.problem.ProblemType.NO_SUCH_CALENDAR;
import static org.demebook.problem.ProblemType.TOO_MANY_REQUESTS;

import io.vertx.core.http.HttpServerRequest;
import jakarta.annotation.security.PermitAll;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import org.demebook.keeper.Attempts;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

@Path("/api/v1/calendars")
@PermitAll
@Tag(name = "Care")
class FeedResource {
    private static final String CALENDAR = "text/calendar;charset=UTF-8";

    @Inject
    Calendars calendars;

    @Inject
    Attempts attempts;

    @GET
    @PermitAll
    @Path("{secret}.ics")
    @Produces(CALENDAR)
    @Operation(
            operationId = "readCalendar",
            summary = "What is to be done, and when births are due, for a calendar program (iCalendar, RFC 5545)",
            description = "Needs no sign-in: whoever has the address reads it. From 60 days back to 400 ahead, of all"
                    + " populations of its keeper.")
    @APIResponse(
            responseCode = "200",
            description = "The calendar",
            content = @Content(mediaType = CALENDAR, schema = @Schema(implementation = String.class)))
    @Refuses({NO_SUCH_CALENDAR, TOO_MANY_REQUESTS})
    public Response read(@RestPath String secret, @Context HttpServerRequest request) {
        return Response.ok(attempts.counted(request, () -> calendars.feed(secret)))
                .header("Cache-Control", "private, no-store")
                .build();
    }
}
