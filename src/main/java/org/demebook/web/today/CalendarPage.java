package org.demebook.web.today;

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
import java.net.URI;
import java.time.Instant;
import org.demebook.calendar.Calendars;
import org.demebook.web.Pages;
import org.demebook.web.Visit;
import org.jspecify.annotations.Nullable;

/** The address at which a calendar program reads what is to be done. */
@Path("/calendar")
@Produces(Pages.HTML)
class CalendarPage {
    @CheckedTemplate(basePath = "today", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance calendar(@Nullable URI address, @Nullable Instant openedAt);
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

    /** Makes a fresh address and shows it, this once. Sent twice it makes two; the one that was shown last is the one that counts. */
    @POST
    public Response open(@Context UriInfo uri) {
        var opened = calendars.open(visit.asker());
        var address = opened.address() == null ? null : uri.getBaseUri().resolve(opened.address());
        return pages.show(Templates.calendar(address, opened.openedAt()));
    }

    @POST
    @Path("closure")
    public Response close() {
        calendars.close(visit.asker());
        return pages.goTo("/calendar");
    }
}
