package org.demebook.web.breeding;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.Instant;
import org.demebook.calendar.Calendars;
import org.demebook.web.Pages;
import org.demebook.web.Visit;
import org.jspecify.annotations.Nullable;

/** The secret address at which a calendar program reads tasks and due days. */
@Path("/calendar")
@Produces(Pages.HTML)
class CalendarPage {
    @CheckedTemplate(basePath = "breeding", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance calendar(@Nullable String address, @Nullable Instant openedAt);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Calendars calendars;

    @GET
    public Response calendar() {
        return pages.show(Templates.calendar(null, calendars.get(visit.asker()).openedAt()));
    }

    /** Shown in the answer itself, this once: the address is kept nowhere. Sent again, it makes another one. */
    @POST
    public Response open(@Context UriInfo uri) {
        var made = calendars.open(visit.asker());
        var address = made.address() == null
                ? null
                : uri.getBaseUri().resolve(made.address()).toString();
        return pages.show(Templates.calendar(address, made.openedAt()));
    }

    @POST
    @Path("closure")
    public Response close() {
        calendars.close(visit.asker());
        return pages.goTo("/calendar");
    }
}
