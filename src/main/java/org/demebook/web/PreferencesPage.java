package org.demebook.web;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.demebook.keeper.SignedIn;

/** Language, units, days and light: chosen for a device, signed in or not. */
@Path("/preferences")
@Produces(Pages.HTML)
class PreferencesPage {
    @CheckedTemplate(basePath = "web", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance preferences(Preferences preferences);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    SignedIn signedIn;

    @GET
    public Response preferences() {
        signedIn.askerIfAny().ifPresent(here -> visit.asker());
        return pages.show(Templates.preferences(visit.getPreferences()));
    }

    @POST
    public Response choose(MultivaluedMap<String, String> form) {
        var chosen = String.join(
                ".",
                List.of("language", "dates", "mass", "length", "appearance").stream()
                        .map(field -> String.valueOf(form.getFirst(field)))
                        .toList());
        var preferences = Preferences.of(chosen, List.of());
        return Response.fromResponse(pages.goTo("/preferences"))
                .cookie(preferences.cookie())
                .build();
    }
}
