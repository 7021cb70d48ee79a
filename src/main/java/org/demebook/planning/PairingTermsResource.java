package org.demebook.planning;

import static org.demebook.problem.ProblemType.NO_SUCH_COLLECTION;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;
import static org.demebook.problem.ProblemType.NO_SUCH_REGION;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import java.util.UUID;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

@Path("/api/v1/populations/{population}/collections/{collection}/pairing-terms")
@Authenticated
@Tag(name = "Pairings")
class PairingTermsResource {
    @Inject
    SignedIn signedIn;

    @Inject
    TermsOfCollections terms;

    @GET
    @Operation(operationId = "getPairingTerms", summary = "What a collection of yours can bear in the coming season")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_COLLECTION})
    public PairingTermsView terms(@RestPath String population, @RestPath UUID collection) {
        return terms.get(signedIn.standing(population), collection);
    }

    @PUT
    @Operation(
            operationId = "statePairingTerms",
            summary = "State what a collection of yours can bear in the coming season",
            description =
                    "All of it, in place of what was stated before. By stating it you consent that plans count the collection's animals"
                            + " as living together; you may withdraw it at any time.")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_COLLECTION, NO_SUCH_REGION})
    public PairingTermsView state(
            @RestPath String population, @RestPath UUID collection, @NotNull @Valid PairingTerms stated) {
        return terms.state(signedIn.standing(population), collection, stated);
    }

    @DELETE
    @Operation(
            operationId = "withdrawPairingTerms",
            summary = "Withdraw what you stated: plans take it into account no longer",
            description = "Then it is used where the animals live only as far as custody is granted.")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_COLLECTION})
    public PairingTermsView withdraw(@RestPath String population, @RestPath UUID collection) {
        return terms.withdraw(signedIn.standing(population), collection);
    }
}
