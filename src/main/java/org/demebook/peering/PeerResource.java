package org.demebook.peering;

import static org.demebook.problem.ProblemType.FEDERATION_OFF;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_SUCH_PEER;
import static org.demebook.problem.ProblemType.PEER_IS_THIS_NODE;
import static org.demebook.problem.ProblemType.PEER_KEYS_DIFFER;
import static org.demebook.problem.ProblemType.PEER_NOT_REACHED;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import org.demebook.keeper.Asker;
import org.demebook.keeper.SignedIn;
import org.demebook.peering.Views.NewPeer;
import org.demebook.peering.Views.PeerView;
import org.demebook.problem.Refusal;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

@Path("/api/v1/peers")
@Authenticated
@Tag(name = "Nodes")
class PeerResource {
    @Inject
    SignedIn signedIn;

    @Inject
    Node node;

    @Inject
    Admission admission;

    @Inject
    Once once;

    @GET
    @Operation(operationId = "listPeers", summary = "The nodes that this one talks with (administrators)")
    @Refuses({NOT_ALLOWED, FEDERATION_OFF})
    public List<PeerView> peers() {
        administrator(signedIn);
        node.identity();
        return admission.all();
    }

    @POST
    @Operation(
            operationId = "admitPeer",
            summary = "Talk with another node from now on (administrators)",
            description =
                    "The node at that address is asked for its keys, now and at no other address. It is let in only if its"
                            + " fingerprint is the one that you were told: compare it by telephone or face to face.")
    @APIResponse(
            responseCode = "201",
            description = "The node is let in",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = PeerView.class)))
    @APIResponse(
            responseCode = "200",
            description = "The node was known; address, TLS key and name are the new ones",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = PeerView.class)))
    @Refuses({NOT_ALLOWED, FEDERATION_OFF, PEER_IS_THIS_NODE, PEER_NOT_REACHED, PEER_KEYS_DIFFER})
    public Response admit(@NotNull @Valid NewPeer described) {
        var by = administrator(signedIn);
        var found = admission.look(described);
        return once.answer(by.keeperId(), described, () -> {
            var admitted = admission.admit(by, described, found);
            return admitted.isNew()
                    ? Answer.created(URI.create("/api/v1/peers"), null, admitted.peer())
                    : Answer.ok(null, admitted.peer());
        });
    }

    @POST
    @Path("{node}/setting-aside")
    @Operation(
            operationId = "setPeerAside",
            summary = "Ask that node nothing and answer it nothing, until it is readmitted (administrators)")
    @APIResponse(
            responseCode = "200",
            description = "The node is set aside; what came of it before stays",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = PeerView.class)))
    @Refuses({NOT_ALLOWED, FEDERATION_OFF, NO_SUCH_PEER})
    public Response setAside(@RestPath("node") String nodeId) {
        return become(nodeId, Peer.State.SET_ASIDE);
    }

    @POST
    @Path("{node}/readmission")
    @Operation(operationId = "readmitPeer", summary = "Talk with a node that was set aside again (administrators)")
    @APIResponse(
            responseCode = "200",
            description = "One talks with it again",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = PeerView.class)))
    @Refuses({NOT_ALLOWED, FEDERATION_OFF, NO_SUCH_PEER})
    public Response readmit(@RestPath("node") String nodeId) {
        return become(nodeId, Peer.State.ACTIVE);
    }

    private Response become(String nodeId, Peer.State state) {
        var by = administrator(signedIn);
        node.identity();
        return once.answer(by.keeperId(), state, () -> Answer.ok(null, admission.become(nodeId, state)));
    }

    static Asker administrator(SignedIn signedIn) {
        var by = signedIn.asker();
        if (!by.administrator()) {
            throw new Refusal(NOT_ALLOWED, "Only an administrator of this node deals with other nodes.");
        }
        return by;
    }
}
