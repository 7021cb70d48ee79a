package org.demebook.programme;

import static org.demebook.problem.ProblemType.ANIMAL_DEAD;
import static org.demebook.problem.ProblemType.BAD_PARAMETER;
import static org.demebook.problem.ProblemType.DRAFT_NOT_READY;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_SUCH_DRAFT;
import static org.demebook.problem.ProblemType.NO_SUCH_PLAN;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;
import static org.demebook.problem.ProblemType.NO_SUCH_PROPOSAL;
import static org.demebook.problem.ProblemType.PLAN_INPUT_GONE;
import static org.demebook.problem.ProblemType.PLAN_NOT_IN_FORCE;
import static org.demebook.problem.ProblemType.PLAN_OUTDATED;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Page;
import org.demebook.rest.Refuses;
import org.demebook.rest.ShownTo;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations/{population}/season-plans")
@Authenticated
@Tag(name = "Season")
class SeasonPlanResource {
    /** A page of plans. */
    @ShownTo(ShownTo.Whom.MEMBERS)
    record PlanPage(List<PlanHeadingView> items, @Nullable String next) {}

    /**
     * A draft that is to be issued.
     *
     * @param draft of yours
     */
    record NewPlan(@NotNull UUID draft) {}

    @Inject
    SignedIn signedIn;

    @Inject
    SeasonPlans plans;

    @Inject
    Recommendations recommendations;

    @Inject
    Answers answers;

    @Inject
    AnswersHeard heard;

    @Inject
    Outcomes outcomes;

    @Inject
    Outlooks outlooks;

    @Inject
    Once once;

    @GET
    @Operation(operationId = "listSeasonPlans", summary = "The plans that were issued, the latest first")
    @APIResponse(
            responseCode = "200",
            description = "A page of plans; the Link header leads to the next",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = PlanPage.class)))
    @Refuses({NO_SUCH_POPULATION, BAD_PARAMETER})
    public Response list(
            @RestPath String population,
            @QueryParam("after") @Nullable String after,
            @QueryParam("limit") @Nullable Integer limit,
            @Context UriInfo uri) {
        return plans.page(signedIn.standing(population), Page.after(after), Page.limit(limit))
                .response(uri);
    }

    @POST
    @Operation(
            operationId = "issueSeasonPlan",
            summary = "Issue a draft as the plan in force (coordinators)",
            description = "A plan that was issued is never changed; another one that follows it takes its place.")
    @APIResponse(
            responseCode = "201",
            description = "The plan",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = SeasonPlanView.class)))
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED, NO_SUCH_DRAFT, DRAFT_NOT_READY, PLAN_OUTDATED})
    public Response issue(@RestPath String population, @NotNull @Valid NewPlan plan) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), plan, () -> {
            var issued = plans.issue(by, plan.draft());
            return Answer.created(
                    URI.create("/api/v1/populations/" + population + "/season-plans/" + issued.id()), null, issued);
        });
    }

    @GET
    @Path("{plan}")
    @Operation(
            operationId = "getSeasonPlan",
            summary = "A plan with its litters, its two figures and its bound (coordinators)",
            description =
                    "Litters of animals that you may not see any more are left out; figures stay those of the day.")
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED, NO_SUCH_PLAN, BAD_PARAMETER})
    public SeasonPlanView plan(@RestPath String population, @RestPath UUID plan) {
        return plans.get(signedIn.standing(population), plan);
    }

    @GET
    @Path("{plan}/recomputation")
    @Operation(
            operationId = "recomputeSeasonPlan",
            summary = "Compute a plan again and hold it against itself (coordinators)",
            description =
                    "From what it was computed with, which is kept beside the journal and named by its digest there.")
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED, NO_SUCH_PLAN, PLAN_INPUT_GONE, BAD_PARAMETER})
    public RecomputationView recompute(@RestPath String population, @RestPath UUID plan) {
        return plans.recompute(signedIn.standing(population), plan);
    }

    @GET
    @Path("{plan}/recommendations")
    @Operation(
            operationId = "listRecommendations",
            summary = "What a plan recommends for each animal of yours",
            description =
                    "Breed, move, rest or hold, with the reason. Of the other animal you read no more than its keeper shows you.")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_PLAN, BAD_PARAMETER})
    public List<RecommendationView> recommendations(@RestPath String population, @RestPath UUID plan) {
        return recommendations.of(signedIn.standing(population), plan);
    }

    @PUT
    @Path("{plan}/litters/{litter}/answer")
    @Operation(
            operationId = "answerProposal",
            summary = "Answer a litter that the plan in force proposes for an animal that lives with you",
            description =
                    "It may be changed; who holds both animals answers for both. The other side reads whether there is to be a litter,"
                            + " and neither your reason nor your note. To accept is to consent that, when both have accepted, both"
                            + " sides may read number, collection and keepers of the other animal for twelve months: grants of each to"
                            + " each, which end when one takes it back.")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_PLAN, PLAN_NOT_IN_FORCE, NO_SUCH_PROPOSAL, ANIMAL_DEAD, BAD_PARAMETER})
    public AnswerView answer(
            @RestPath String population, @RestPath UUID plan, @RestPath UUID litter, @NotNull @Valid NewAnswer answer) {
        return answers.give(signedIn.standing(population), plan, litter, answer);
    }

    @GET
    @Path("{plan}/answers")
    @Operation(
            operationId = "listAnswers",
            summary = "What keepers answered to a plan, and how many did (coordinators)",
            description = "Reasons and notes too. Litters of animals that you may not see any more are left out.")
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED, NO_SUCH_PLAN, BAD_PARAMETER})
    public AnswersView answers(@RestPath String population, @RestPath UUID plan) {
        return heard.of(signedIn.standing(population), plan);
    }

    @GET
    @Path("{plan}/outcome")
    @Operation(
            operationId = "getSeasonOutcome",
            summary = "What came of a plan, held against it",
            description =
                    "By the births that you may see: for coordinators of the whole plan, for everybody else of the litters of their own"
                            + " animals.")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_PLAN, BAD_PARAMETER})
    public OutcomeView outcome(@RestPath String population, @RestPath UUID plan) {
        return outcomes.of(signedIn.standing(population), plan);
    }

    @GET
    @Path("{plan}/outlook")
    @Operation(
            operationId = "lookAheadOfPlan",
            summary = "What years to come may bring if a plan is followed (coordinators)",
            description =
                    "Several seasons by the same step on expected young, and on litters drawn by lot; when gene diversity falls below a target; what"
                            + " more founders and longer generations would be worth; founders whose genes hang on few animals.")
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED, NO_SUCH_PLAN, BAD_PARAMETER})
    public OutlookView outlook(@RestPath String population, @RestPath UUID plan, @BeanParam OutlookAsked asked) {
        return outlooks.ofPlan(signedIn.standing(population), plan, asked.question());
    }
}
