package org.demebook.rest;

import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

@Path("/api/v1/node")
@Tag(name = "Sign-in")
class NodeResource {
    /**
     * What a program has to know before it signs in.
     *
     * @param code this node's code in the studbook numbers that it issues
     * @param signIn {@code local}: POST /api/v1/tokens; {@code keycloak}: tokens come from a Keycloak
     */
    @ShownTo(ShownTo.Whom.MEMBERS)
    record NodeView(String code, String signIn) {}

    private final NodeView view;

    NodeResource(
            @ConfigProperty(name = "demebook.node.code") String code,
            @ConfigProperty(name = "demebook.sign-in") String signIn) {
        view = new NodeView(code, signIn);
    }

    @GET
    @PermitAll
    @Operation(operationId = "getNode", summary = "What this node is", description = "Needs no sign-in.")
    @Refuses
    public NodeView node() {
        return view;
    }
}
