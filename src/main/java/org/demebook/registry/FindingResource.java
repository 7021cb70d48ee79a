package org.demebook.registry;

import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.ProblemType.MISTYPED_NUMBER;
import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import org.demebook.keeper.SignedIn;
import org.demebook.problem.LeftAsIs;
import org.demebook.registry.AnimalFindings.AnimalFindingsView;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

@Path("/api/v1/populations/{population}/animals/{number}/findings")
@Authenticated
@Tag(name = "Animals")
class FindingResource {
    @Inject
    SignedIn signedIn;

    @Inject
    AnimalFindings findings;

    @Inject
    Corrections corrections;

    @Inject
    Once once;

    @GET
    @Operation(
            operationId = "listFindings",
            summary = "What is strained about an animal of yours now, and what was left as it is, with the reasons",
            description =
                    "Checked anew each time. A finding that was left is not raised again for the same animal; each says why it matters and, where something speaks for it, which of two facts is likelier wrong.")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_YOUR_ANIMAL})
    public AnimalFindingsView findings(@RestPath String population, @RestPath String number) {
        return findings.of(signedIn.standing(population), number);
    }

    @POST
    @Path("leaving")
    @Operation(
            operationId = "leaveFinding",
            summary = "Leave as it is what a rule speaks against, with the reason (the holder)",
            description = "It is not raised again for this animal. An error is never left: correct it.")
    @APIResponse(
            responseCode = "200",
            description = "What is strained now, and what was left",
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = AnimalFindingsView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_YOUR_ANIMAL, INVALID_VALUES})
    public Response leave(@RestPath String population, @RestPath String number, @NotNull @Valid LeftAsIs left) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), left, () -> Answer.ok(null, corrections.leave(by, number, left)));
    }
}
