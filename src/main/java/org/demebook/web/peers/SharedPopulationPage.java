package org.demebook.web.peers;

import static org.demebook.web.peers.PeersPage.administrator;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import org.demebook.federation.Adoption;
import org.demebook.federation.Overview;
import org.demebook.federation.Sharing;
import org.demebook.federation.Views.AlarmView;
import org.demebook.federation.Views.FederationView;
import org.demebook.federation.Views.NewAdoption;
import org.demebook.federation.Views.NewHeir;
import org.demebook.federation.Views.NewSeat;
import org.demebook.federation.Views.SharingNode;
import org.demebook.keeper.Asker;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.web.Forms;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** How it stands with the nodes that share a population. */
@Path("/peers/populations/{population}")
@Produces(Pages.HTML)
class SharedPopulationPage {
    @CheckedTemplate(basePath = "web/peers", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance population(
                FederationView shared,
                List<AlarmView> alarms,
                List<NamedHeir> named,
                List<Option> others,
                List<Option> heirs,
                Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Overview overview;

    @Inject
    Sharing sharing;

    @Inject
    Adoption adoption;

    @GET
    public Response open(@RestPath String population) {
        administrator(visit);
        return pages.show(page(population, Typed.nothing()));
    }

    /** The evidence of one alarm, as it is passed on: anybody can check it. */
    @GET
    @Path("alarm")
    @Produces(MediaType.APPLICATION_JSON)
    public Response proof(@RestPath String population, @QueryParam("id") @Nullable String id) {
        administrator(visit);
        var found = overview.alarms(sharing.population(population)).stream()
                .filter(alarm -> alarm.id().equals(id))
                .findFirst()
                .orElseThrow(() ->
                        new Refusal(ProblemType.NO_SUCH_ADDRESS, "There is no such alarm of this population here."));
        return Response.ok(found)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"alarm-%s.json\"".formatted(found.id()))
                .build();
    }

    @POST
    @Path("seats")
    public Response seat(@RestPath String population, MultivaluedMap<String, String> form) {
        return decide(population, form, (by, id, typed) -> {
            var seat = forms.read(typed, NewSeat.class);
            sharing.seat(id, seat.node(), seat.code());
        });
    }

    @POST
    @Path("nodes/{node}/setting-aside")
    public Response setAside(
            @RestPath String population, @RestPath("node") String nodeId, MultivaluedMap<String, String> form) {
        return decide(population, form, (by, id, typed) -> sharing.setAside(by, id, nodeId, true));
    }

    @POST
    @Path("nodes/{node}/readmission")
    public Response readmit(
            @RestPath String population, @RestPath("node") String nodeId, MultivaluedMap<String, String> form) {
        return decide(population, form, (by, id, typed) -> sharing.setAside(by, id, nodeId, false));
    }

    @POST
    @Path("heirs")
    public Response nameHeir(@RestPath String population, MultivaluedMap<String, String> form) {
        return decide(population, form, (by, id, typed) -> {
            var heir = forms.read(typed, NewHeir.class);
            adoption.nameHeir(by, id, heir.gone(), heir.heir());
        });
    }

    @POST
    @Path("adoptions")
    public Response adopt(@RestPath String population, MultivaluedMap<String, String> form) {
        return decide(
                population,
                form,
                (by, id, typed) -> adoption.adopt(
                        by, id, forms.read(typed, NewAdoption.class).gone()));
    }

    private interface Decision {
        void by(Asker by, UUID population, Typed typed);
    }

    private Response decide(String population, MultivaluedMap<String, String> form, Decision decision) {
        var by = administrator(visit);
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    decision.by(by, sharing.population(population), typed);
                    return address(population);
                },
                again -> page(population, again));
    }

    private TemplateInstance page(String code, Typed typed) {
        var id = sharing.population(code);
        var shared = overview.of(id, code);
        var others = shared.nodes().stream().filter(seat -> !seat.thisNode()).toList();
        return Templates.population(
                shared, overview.alarms(id), NamedHeir.of(shared), options(others), options(shared.nodes()), typed);
    }

    private static List<Option> options(List<SharingNode> nodes) {
        return nodes.stream()
                .map(seat -> new Option(
                        seat.node(), seat.name() == null ? seat.code() : "%s (%s)".formatted(seat.code(), seat.name())))
                .toList();
    }

    private static String address(String population) {
        return "/peers/populations/" + population;
    }
}
