package org.demebook.crossing;

import static org.demebook.problem.ProblemType.*;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

@Path("/api/v1/populations/{population}/adopted-animals")
@Authenticated
@Tag(name = "Crossings")
class AdoptedAnimalResource {
    @Inject
    SignedIn signedIn;

    @Inject
    AdoptedAnimals adopted;

    @Inject
    Once once;

    @GET
    @Operation(
            operationId = "listAdoptedAnimals",
            summary =
                    "Animals of a node that is gone, adopted by this one, that have no keeper here yet (coordinators)",
            description = "With what was told of each, as far as members of this node may read it.")
    @APIResponse(
            responseCode = "200",
            description = "Those that wait for a keeper, in the order of their names between nodes")
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED})
    public List<AdoptedAnimalView> list(@RestPath String population) {
        return adopted.waiting(signedIn.standing(population));
    }

    @POST
    @Path("{animal}/placement")
    @Operation(
            operationId = "placeAdoptedAnimal",
            summary = "Say who keeps an adopted animal on this node (coordinators)",
            description =
                    "Its keeper joins the population here first, and shows you that it is theirs: its papers, its transponder. The"
                            + " record that it had here comes back to life, else one is made of what was told.")
    @APIResponse(
            responseCode = "200",
            description = "It is in a collection of that keeper's",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = PlacedView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NOT_ALLOWED,
        NO_SUCH_ANIMAL,
        NO_SUCH_KEEPER,
        MISTYPED_NUMBER,
        INVALID_VALUES,
        ANIMAL_ELSEWHERE
    })
    public Response place(@RestPath String population, @RestPath String animal, @NotNull @Valid Placement placement) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), placement, () -> Answer.ok(null, adopted.place(by, animal, placement)));
    }
}
