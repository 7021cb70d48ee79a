package org.demebook.registry;

import static org.demebook.problem.ProblemType.MISTYPED_NUMBER;
import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import org.demebook.keeper.SignedIn;
import org.demebook.registry.AnimalFindings.AnimalFindingsView;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
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
}
