package org.demebook.ancestry;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;
import static org.demebook.problem.ProblemType.MISTYPED_NUMBER;
import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.function.Supplier;
import org.demebook.ancestry.KeptAnswers.Kind;
import org.demebook.ancestry.KeptAnswers.Question;
import org.demebook.consent.Purpose;
import org.demebook.keeper.SignedIn;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations/{population}")
@Authenticated
@Tag(name = "Ancestry")
class AncestryResource {
    private static final int USUAL_GENERATIONS = 5;
    private static final int MOST_GENERATIONS = 20;

    @Inject
    SignedIn signedIn;

    @Inject
    Ancestries ancestries;

    @Inject
    KeptAnswers kept;

    @Inject
    Clock clock;

    @Context
    Request request;

    @GET
    @Path("animals/{number}/ancestry")
    @Operation(
            operationId = "getAncestry",
            summary = "Where an animal comes from",
            description =
                    "Its ancestors by number, its inbreeding and its founders, as far as their keepers grant it. The ETag holds"
                            + " until the answer changes.")
    @APIResponse(
            responseCode = "200",
            description = "Each ancestor once, the nearest generation first",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = AncestryView.class)))
    @APIResponse(responseCode = "304", description = "Nothing has changed since the ETag in If-None-Match")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, BAD_PARAMETER})
    public Response ancestry(
            @RestPath String population,
            @RestPath String number,
            @QueryParam("generations") @Nullable Integer generations) {
        var by = signedIn.standing(population);
        int deep = generations(generations);
        var at = clock.instant();
        var snapshot = ancestries.seen(by, at);
        int row = ancestries.row(by, snapshot, number);
        disclosed(by, at, snapshot, AncestryViews.ancestors(snapshot, row, deep).keySet());
        return unlessKnown(
                new Question(snapshot.identity(), Kind.ANCESTRY, row, deep),
                () -> AncestryViews.ancestry(snapshot, row, deep));
    }

    @GET
    @Path("animals/{number}/kinship/{other}")
    @Operation(
            operationId = "getKinship",
            summary = "How two animals are related",
            description = "Their kinship is the inbreeding coefficient of young of the two.")
    @APIResponse(
            responseCode = "200",
            description = "Kinship and common ancestors",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = KinshipView.class)))
    @APIResponse(responseCode = "304", description = "Nothing has changed since the ETag in If-None-Match")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER})
    public Response kinship(@RestPath String population, @RestPath String number, @RestPath String other) {
        var by = signedIn.standing(population);
        var at = clock.instant();
        var snapshot = ancestries.seen(by, at);
        int row = ancestries.row(by, snapshot, number);
        int otherRow = ancestries.row(by, snapshot, other);
        disclosed(by, at, snapshot, List.of(row, otherRow));
        return unlessKnown(
                new Question(snapshot.identity(), Kind.KINSHIP, row, otherRow),
                () -> AncestryViews.kinship(snapshot, row, otherRow));
    }

    @GET
    @Path("gene-pool")
    @Operation(operationId = "getGenePool", summary = "Gene diversity and founders of the living animals")
    @APIResponse(
            responseCode = "200",
            description = "The living animals as one pool of genes",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = GenePoolView.class)))
    @APIResponse(responseCode = "304", description = "Nothing has changed since the ETag in If-None-Match")
    @Refuses(NO_SUCH_POPULATION)
    public Response genePool(@RestPath String population) {
        var snapshot = ancestries.seen(signedIn.standing(population), clock.instant());
        return unlessKnown(
                new Question(snapshot.identity(), Kind.GENE_POOL, 0, 0), () -> AncestryViews.genePool(snapshot));
    }

    private void disclosed(Standing by, Instant at, Snapshot snapshot, Collection<Integer> rows) {
        ancestries.disclosed(
                by, Purpose.PEDIGREE_VIEW, at, snapshot, rows.stream().mapToInt(Integer::intValue));
    }

    private Response unlessKnown(Question question, Supplier<?> view) {
        var answer = kept.get(question, view);
        var unchanged = request.evaluatePreconditions(answer.tag());
        return unchanged != null
                ? unchanged.tag(answer.tag()).build()
                : Response.ok(answer.body(), MediaType.APPLICATION_JSON_TYPE)
                        .tag(answer.tag())
                        .build();
    }

    private static int generations(@Nullable Integer asked) {
        if (asked == null) {
            return USUAL_GENERATIONS;
        }
        if (asked < 1 || asked > MOST_GENERATIONS) {
            throw new Refusal(BAD_PARAMETER, "generations is %d; ask for 1 to %d.".formatted(asked, MOST_GENERATIONS));
        }
        return asked;
    }
}
