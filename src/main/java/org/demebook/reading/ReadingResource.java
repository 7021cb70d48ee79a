package org.demebook.reading;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;
import static org.demebook.problem.ProblemType.NO_SUCH_LITTER;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import java.util.UUID;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations/{population}/litters/{litter}")
@Authenticated
@Tag(name = "Litters")
class ReadingResource {
    @Inject
    SignedIn signedIn;

    @Inject
    Readings readings;

    @GET
    @Path("reading")
    @Operation(
            operationId = "readLitter",
            summary = "Whether what a litter lost is within chance for its population",
            description = "Compared with the other litters of the population, or with your own where fewer than three"
                    + " collections bred. A probability and a plain sentence, and for a whole litter what is worth"
                    + " checking; never a cause.")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_LITTER, BAD_PARAMETER})
    public LitterReading read(@RestPath String population, @RestPath UUID litter) {
        return readings.read(signedIn.standing(population), litter);
    }

    @GET
    @Path("fatherless-signs")
    @Operation(
            operationId = "listFatherlessSigns",
            summary = "What speaks for young without a sire, scored and never decided",
            description = "To take it so, correct the sire of the young to none.")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_LITTER, BAD_PARAMETER})
    public FatherlessSigns fatherlessSigns(
            @RestPath String population,
            @RestPath UUID litter,
            @QueryParam("noMale") @Nullable Boolean noMale,
            @QueryParam("onlyRecessives") @Nullable Boolean onlyRecessives) {
        return readings.fatherlessSigns(
                signedIn.standing(population),
                litter,
                Boolean.TRUE.equals(noMale),
                Boolean.TRUE.equals(onlyRecessives));
    }
}
