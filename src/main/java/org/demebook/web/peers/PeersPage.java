package org.demebook.web.peers;

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
import org.demebook.federation.Federations;
import org.demebook.keeper.Asker;
import org.demebook.peering.Admission;
import org.demebook.peering.Node;
import org.demebook.peering.Peer;
import org.demebook.peering.Views.NewPeer;
import org.demebook.peering.Views.PeerView;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.registry.Populations;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** Who this node is to others, and whom it talks with. */
@Path("/peers")
@Produces(Pages.HTML)
class PeersPage {
    @CheckedTemplate(basePath = "web/peers", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance peers(
                @Nullable String fingerprint, List<PeerView> peers, List<String> shared, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Node node;

    @Inject
    Admission admission;

    @Inject
    Federations federations;

    @Inject
    Populations populations;

    @GET
    public Response open() {
        administrator(visit);
        return pages.show(page(Typed.nothing()));
    }

    /** The other node is called before anything is held in the database. */
    @POST
    public Response admit(MultivaluedMap<String, String> form) {
        var by = administrator(visit);
        var typed = Typed.of(form);
        return forms.attempt(
                typed,
                () -> {
                    var described = forms.read(typed, NewPeer.class);
                    var found = admission.look(described);
                    return forms.once(
                            by.keeperId(),
                            typed,
                            () -> {
                                admission.admit(by, described, found);
                                return "/peers";
                            },
                            this::page);
                },
                this::page);
    }

    @POST
    @Path("{node}/setting-aside")
    public Response setAside(@RestPath("node") String nodeId, MultivaluedMap<String, String> form) {
        return become(nodeId, Peer.State.SET_ASIDE, Typed.of(form));
    }

    @POST
    @Path("{node}/readmission")
    public Response readmit(@RestPath("node") String nodeId, MultivaluedMap<String, String> form) {
        return become(nodeId, Peer.State.ACTIVE, Typed.of(form));
    }

    private Response become(String nodeId, Peer.State state, Typed typed) {
        var by = administrator(visit);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    admission.become(nodeId, state);
                    return "/peers";
                },
                this::page);
    }

    private TemplateInstance page(Typed typed) {
        var on = node.isFederated();
        return Templates.peers(
                on ? node.identity().fingerprint() : null,
                on ? admission.all() : List.of(),
                federations.shared().stream().map(populations::codeOf).sorted().toList(),
                typed);
    }

    static Asker administrator(Visit visit) {
        var by = visit.asker();
        if (!by.administrator()) {
            throw new Refusal(ProblemType.NOT_ALLOWED, "Only an administrator of this node deals with other nodes.");
        }
        return by;
    }
}
