package org.demebook.peering;

import static org.demebook.problem.ProblemType.FEDERATION_OFF;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import org.demebook.keeper.SignedIn;
import org.demebook.peering.Views.NodeIdentityView;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

@Path("/api/v1/node")
@Authenticated
@Tag(name = "Nodes")
class NodeIdentityResource {
    @Inject
    SignedIn signedIn;

    @Inject
    Node node;

    @Inject
    FederationPort port;

    @Inject
    Once once;

    @GET
    @Path("identity")
    @Operation(
            operationId = "getNodeIdentity",
            summary = "Who this node is to others (administrators)",
            description =
                    "Read fingerprint and address to the administrator of another node; both of you let the other in.")
    @Refuses({NOT_ALLOWED, FEDERATION_OFF})
    public NodeIdentityView identity() {
        PeerResource.administrator(signedIn);
        return view();
    }

    @POST
    @Path("key-rotations")
    @Operation(
            operationId = "rotateNodeKey",
            summary = "Sign with a new key from now on (administrators)",
            description =
                    "The node stays who it is: its id is that of its first key. Peers learn of the new key by themselves.")
    @APIResponse(
            responseCode = "200",
            description = "The new key is in use",
            content =
                    @Content(mediaType = "application/json", schema = @Schema(implementation = NodeIdentityView.class)))
    @Refuses({NOT_ALLOWED, FEDERATION_OFF})
    public Response rotate() {
        var by = PeerResource.administrator(signedIn);
        node.identity();
        return once.answer(by.keeperId(), "", () -> {
            node.rotateKey();
            return Answer.ok(null, view());
        });
    }

    private NodeIdentityView view() {
        var identity = node.identity();
        return new NodeIdentityView(
                identity.nodeId(),
                identity.fingerprint(),
                identity.tlsPin(),
                port.address(),
                identity.keys().keys().size());
    }
}
