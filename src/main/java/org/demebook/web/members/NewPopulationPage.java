package org.demebook.web.members;

import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;

/** The form with which a population is founded. */
@Path("/populations/new")
@Produces(Pages.HTML)
class NewPopulationPage {
    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    FoundPage founding;

    @GET
    public Response form() {
        visit.asker();
        return pages.show(founding.page(Typed.nothing()));
    }
}
