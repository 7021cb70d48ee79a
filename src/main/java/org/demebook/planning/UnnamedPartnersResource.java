package org.demebook.planning;

import static org.demebook.problem.ProblemType.ANIMAL_DEAD;
import static org.demebook.problem.ProblemType.MISTYPED_NUMBER;
import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;
import static org.demebook.problem.ProblemType.NO_CANDIDATES;
import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;
import static org.demebook.problem.ProblemType.ON_HOLD;
import static org.demebook.problem.ProblemType.TOO_FEW_CONTRIBUTE;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

@Path("/api/v1/populations/{population}/animals/{number}/unnamed-partners")
@Authenticated
@Tag(name = "Pairings")
class UnnamedPartnersResource {
    @Inject
    SignedIn signedIn;

    @Inject
    UnnamedPartners partners;

    @GET
    @Operation(
            operationId = "listUnnamedPartners",
            summary = "How many animals that their keepers do not show would suit an animal of yours, by pseudonym",
            description =
                    "At most five, in no order of merit and without figures; the same for a calendar month. They are"
                            + " looked for among animals whose keepers let them be computed with and not be seen.")
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NOT_YOUR_ANIMAL,
        ANIMAL_DEAD,
        ON_HOLD,
        NO_CANDIDATES,
        TOO_FEW_CONTRIBUTE
    })
    public UnnamedPartnersView unnamedPartners(@RestPath String population, @RestPath String number) {
        return partners.of(signedIn.standing(population), number);
    }
}
