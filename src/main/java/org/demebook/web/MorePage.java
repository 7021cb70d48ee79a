package org.demebook.web;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import org.jboss.resteasy.reactive.RestPath;

/** On a phone: the ways that have no room in the bar. */
@Path("/populations/{population}/more")
@Produces(Pages.HTML)
class MorePage {
    @CheckedTemplate(basePath = "web", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance more();
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @GET
    public Response more(@RestPath String population) {
        visit.in(population);
        return pages.show(Templates.more());
    }
}
