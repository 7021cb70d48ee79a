package org.demebook.federation;

import static org.demebook.problem.ProblemType.ALREADY_SHARED;
import static org.demebook.problem.ProblemType.FEDERATION_OFF;
import static org.demebook.problem.ProblemType.NODE_FENCED;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NOT_SAID;
import static org.demebook.problem.ProblemType.NOT_SHARED;
import static org.demebook.problem.ProblemType.NO_SUCH_PEER;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;
import static org.demebook.problem.ProblemType.SEAT_TAKEN;

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
import java.util.UUID;
import java.util.function.BiFunction;
import org.demebook.federation.Views.AdoptionView;
import org.demebook.federation.Views.AlarmView;
import org.demebook.federation.Views.FederationView;
import org.demebook.federation.Views.GoneView;
import org.demebook.federation.Views.NewAdoption;
import org.demebook.federation.Views.NewHeir;
import org.demebook.federation.Views.NewSeat;
import org.demebook.keeper.Asker;
import org.demebook.peering.Node;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations/{population}/federation")
@Authenticated
@Tag(name = "Nodes")
class FederationResource {
    @Inject
    Administrators administrators;

    @Inject
    Node node;

    @Inject
    Sharing sharing;

    @Inject
    Overview overview;

    @Inject
    Adoption adoption;

    @Inject
    Once once;

    @GET
    @Operation(
            operationId = "getFederation",
            summary = "The nodes that share a population, and how it stands with them (administrators)")
    @Refuses({NOT_ALLOWED, FEDERATION_OFF, NO_SUCH_POPULATION, NOT_SHARED})
    public FederationView federation(@RestPath String population) {
        administrators.require();
        node.identity();
        return overview.of(sharing.population(population), population);
    }

    @POST
    @Operation(
            operationId = "sharePopulation",
            summary = "Share a population with other nodes from now on (administrators)",
            description =
                    "This node's charter says who takes part. Nothing of any animal is told by this: that is for keepers to grant.")
    @APIResponse(
            responseCode = "201",
            description = "The population is shared, so far with nobody",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = FederationView.class)))
    @Refuses({NOT_ALLOWED, FEDERATION_OFF, NO_SUCH_POPULATION, ALREADY_SHARED})
    public Response share(@RestPath String population) {
        return once(population, null, (by, id) -> {
            sharing.share(by, id);
            var address = URI.create("/api/v1/populations/" + population + "/federation");
            return Answer.created(address, null, overview.of(id, population));
        });
    }

    @POST
    @Path("seats")
    @Operation(
            operationId = "giveSeat",
            summary = "Give another node a seat in a population, or another code (administrators of the founding node)",
            description = "From then on it may join (POST /api/v1/federated-populations, on that node).")
    @APIResponse(
            responseCode = "200",
            description = "The node has the seat",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = FederationView.class)))
    @Refuses({
        NOT_ALLOWED,
        FEDERATION_OFF,
        NO_SUCH_POPULATION,
        NOT_SHARED,
        NO_SUCH_PEER,
        SEAT_TAKEN,
        NOT_SAID,
        NODE_FENCED
    })
    public Response seat(@RestPath String population, @NotNull @Valid NewSeat seat) {
        return once(population, seat, (by, id) -> {
            sharing.seat(id, seat.node(), seat.code());
            return Answer.ok(null, overview.of(id, population));
        });
    }

    @GET
    @Path("alarms")
    @Operation(
            operationId = "listAlarms",
            summary = "What other nodes did that honest and healthy ones do not do, with its proof (administrators)")
    @Refuses({NOT_ALLOWED, FEDERATION_OFF, NO_SUCH_POPULATION, NOT_SHARED})
    public List<AlarmView> alarms(@RestPath String population) {
        administrators.require();
        node.identity();
        return overview.alarms(sharing.population(population));
    }

    @POST
    @Path("nodes/{node}/setting-aside")
    @Operation(
            operationId = "setNodeAside",
            summary = "Neither follow nor wait for that node in this population (administrators)")
    @APIResponse(
            responseCode = "200",
            description = "The node is set aside; what came of it before stays",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = FederationView.class)))
    @Refuses({NOT_ALLOWED, FEDERATION_OFF, NO_SUCH_POPULATION, NOT_SHARED, NO_SUCH_PEER})
    public Response setAside(@RestPath String population, @RestPath("node") String nodeId) {
        return aside(population, nodeId, true);
    }

    @POST
    @Path("nodes/{node}/readmission")
    @Operation(operationId = "followNodeAgain", summary = "Follow a node that was set aside again (administrators)")
    @APIResponse(
            responseCode = "200",
            description = "The node is followed",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = FederationView.class)))
    @Refuses({NOT_ALLOWED, FEDERATION_OFF, NO_SUCH_POPULATION, NOT_SHARED, NO_SUCH_PEER})
    public Response readmit(@RestPath String population, @RestPath("node") String nodeId) {
        return aside(population, nodeId, false);
    }

    private Response aside(String population, String nodeId, boolean aside) {
        return once(population, aside, (by, id) -> {
            sharing.setAside(by, id, nodeId, aside);
            return Answer.ok(null, overview.of(id, population));
        });
    }

    @POST
    @Path("heirs")
    @Operation(
            operationId = "nameHeir",
            summary = "Say that a node is gone for good, and which node may adopt its animals (administrators)",
            description =
                    "Agree with the administrators of the other nodes first: a node names one heir and cannot take it back. The node that is gone is set aside here.")
    @APIResponse(
            responseCode = "200",
            description = "What nodes say of the one that is gone",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = GoneView.class)))
    @Refuses({NOT_ALLOWED, FEDERATION_OFF, NO_SUCH_POPULATION, NOT_SHARED, NO_SUCH_PEER, NOT_SAID, NODE_FENCED})
    public Response nameHeir(@RestPath String population, @NotNull @Valid NewHeir heir) {
        return once(population, heir, (by, id) -> Answer.ok(null, adoption.nameHeir(by, id, heir.gone(), heir.heir())));
    }

    @POST
    @Path("adoptions")
    @Operation(
            operationId = "adoptAnimals",
            summary = "Hold the animals of a node that is gone for good (administrators)",
            description =
                    "More than half of the other nodes have to have named this one as the heir, itself among them.")
    @APIResponse(
            responseCode = "200",
            description = "The animals are held by this node",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = AdoptionView.class)))
    @Refuses({NOT_ALLOWED, FEDERATION_OFF, NO_SUCH_POPULATION, NOT_SHARED, NO_SUCH_PEER, NOT_SAID, NODE_FENCED})
    public Response adopt(@RestPath String population, @NotNull @Valid NewAdoption adopted) {
        return once(population, adopted, (by, id) -> Answer.ok(null, adoption.adopt(by, id, adopted.gone())));
    }

    private Response once(String population, @Nullable Object sent, BiFunction<Asker, UUID, Answer> work) {
        var by = administrators.require();
        node.identity();
        return once.answer(
                by.keeperId(), sent == null ? "" : sent, () -> work.apply(by, sharing.population(population)));
    }
}
