package org.demebook.web;

import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;

/** The populations that somebody belongs to; for who belongs to one alone, the way to found another. */
@Path("/populations")
@Produces(Pages.HTML)
class PopulationsPage {
    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @GET
    public Response populations() {
        visit.asker();
        return pages.show(WelcomePage.Templates.populations(visit.getPopulations()));
    }
}
