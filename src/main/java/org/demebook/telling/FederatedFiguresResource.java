package org.demebook.telling;

import static org.demebook.problem.ProblemType.NOT_SHARED;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.util.Locale;
import org.demebook.federation.Federations;
import org.demebook.keeper.SignedIn;
import org.demebook.kinship.Convention;
import org.demebook.kinship.Skeleton;
import org.demebook.kinship.SkeletonFigures.OfPool;
import org.demebook.problem.Refusal;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

@Path("/api/v1/populations/{population}/federation/figures")
@Authenticated
@Tag(name = "Ancestry")
class FederatedFiguresResource {
    @Inject
    SignedIn signedIn;

    @Inject
    Federations federations;

    @GET
    @Operation(
            operationId = "getFederatedFigures",
            summary = "Gene diversity of a population over all its nodes",
            description = "Of what its nodes tell everybody. The same heads give the same figures on every node.")
    @Refuses({NO_SUCH_POPULATION, NOT_SHARED})
    public FederatedFiguresView figures(@RestPath String population) {
        var by = signedIn.standing(population);
        if (!federations.isShared(by.populationId())) {
            throw new Refusal(
                    NOT_SHARED,
                    "%s is not shared with other nodes; its figures are those of its gene pool (GET …/gene-pool)."
                            .formatted(by.populationCode()));
        }
        return view(federations.reading(
                by.populationId(), part -> FederatedFigures.skeleton(part.heads(), part.told(Telling::isToEverybody))));
    }

    private static FederatedFiguresView view(Skeleton skeleton) {
        var figures = skeleton.figures(Convention.UNRELATED);
        var pool = figures.pool();
        return new FederatedFiguresView(
                skeleton.journalHeads(),
                skeleton.animals().size(),
                pool.map(OfPool::living).orElse(0),
                pool.map(OfPool::geneDiversity).orElse(null),
                pool.map(OfPool::meanKinship).orElse(null),
                pool.map(OfPool::founderGenomeEquivalents).orElse(null),
                pool.map(OfPool::knownFraction).orElse(null),
                figures.convention().name().toLowerCase(Locale.ROOT));
    }
}
