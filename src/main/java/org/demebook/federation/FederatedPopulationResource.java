package org.demebook.federation;

import static org.demebook.problem.ProblemType.ALREADY_SHARED;
import static org.demebook.problem.ProblemType.CODE_TAKEN;
import static org.demebook.problem.ProblemType.FEDERATION_OFF;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_SEAT;
import static org.demebook.problem.ProblemType.NO_SUCH_PEER;
import static org.demebook.problem.ProblemType.PEER_NOT_REACHED;
import static org.demebook.problem.ProblemType.SEAT_TAKEN;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.demebook.federation.Views.NewFederatedPopulation;
import org.demebook.registry.PopulationView;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

@Path("/api/v1/federated-populations")
@Authenticated
@Tag(name = "Nodes")
class FederatedPopulationResource {
    @Inject
    Administrators administrators;

    @Inject
    Joining joining;

    @Inject
    Once once;

    @POST
    @Operation(
            operationId = "joinPopulation",
            summary = "Join a population that another node founded (administrators)",
            description =
                    "The founding node is asked for its charter, which has to give this node a seat. The population has the same"
                            + " code here as there; you coordinate its keepers on this node.")
    @APIResponse(
            responseCode = "201",
            description = "This node takes part",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = PopulationView.class)))
    @Refuses({
        NOT_ALLOWED,
        FEDERATION_OFF,
        NO_SUCH_PEER,
        PEER_NOT_REACHED,
        NO_SEAT,
        SEAT_TAKEN,
        ALREADY_SHARED,
        CODE_TAKEN
    })
    public Response join(@NotNull @Valid NewFederatedPopulation joined) {
        var by = administrators.require();
        var described = joining.look(joined.population(), joined.founder());
        return once.answer(by.keeperId(), joined, () -> {
            var view = joining.join(by, joined.population(), joined.founder(), described);
            return Answer.created(URI.create("/api/v1/populations/" + view.code()), view.revision(), view);
        });
    }
}
