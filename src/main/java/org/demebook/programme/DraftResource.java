package org.demebook.programme;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;
import static org.demebook.problem.ProblemType.DRAFT_NOT_READY;
import static org.demebook.problem.ProblemType.MISTYPED_NUMBER;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_CANDIDATES;
import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_DRAFT;
import static org.demebook.problem.ProblemType.NO_SUCH_PLAN;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;
import static org.demebook.problem.ProblemType.TOO_MANY_DRAFTS;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.UUID;
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

@Path("/api/v1/populations/{population}/season-drafts")
@Authenticated
@Tag(name = "Season")
class DraftResource {
    @Inject
    SignedIn signedIn;

    @Inject
    Drafts drafts;

    @Inject
    Outlooks outlooks;

    @Inject
    Once once;

    @GET
    @Operation(
            operationId = "listSeasonDrafts",
            summary = "The drafts that you had computed, the latest first (coordinators)")
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED})
    public List<DraftView> list(@RestPath String population) {
        return drafts.all(signedIn.standing(population));
    }

    @POST
    @Operation(
            operationId = "startSeasonDraft",
            summary = "Have a season's plan computed (coordinators)",
            description =
                    "The answer comes at once; look at the draft for how far it is, and for the best plan so far. With whatIf it is a"
                            + " question and nothing else. Nothing of a draft is stored until it is issued; it is forgotten two hours"
                            + " after you last looked.")
    @APIResponse(
            responseCode = "202",
            description = "The draft, being computed",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = DraftView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NOT_ALLOWED,
        BAD_PARAMETER,
        NO_CANDIDATES,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NO_SUCH_PLAN,
        TOO_MANY_DRAFTS
    })
    public Response start(@RestPath String population, @NotNull @Valid NewDraft draft) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), draft, () -> {
            var started = drafts.start(by, draft);
            return Answer.accepted(
                    URI.create("/api/v1/populations/" + population + "/season-drafts/" + started.id()), started);
        });
    }

    @GET
    @Path("{draft}")
    @Operation(
            operationId = "getSeasonDraft",
            summary = "A draft: how far it is, the best plan so far, and how it differs from the plan in force")
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED, NO_SUCH_DRAFT, BAD_PARAMETER})
    public DraftView draft(@RestPath String population, @RestPath UUID draft) {
        return drafts.get(signedIn.standing(population), draft);
    }

    @POST
    @Path("{draft}/stop")
    @Operation(
            operationId = "stopSeasonDraft",
            summary = "End the work on a draft",
            description = "It ends within a second or so. The best plan so far is kept, and may be issued.")
    @APIResponse(
            responseCode = "200",
            description = "The draft as it is now",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = DraftView.class)))
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED, NO_SUCH_DRAFT, BAD_PARAMETER})
    public Response stop(@RestPath String population, @RestPath UUID draft) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), null, () -> Answer.ok(null, drafts.stop(by, draft)));
    }

    @GET
    @Path("{draft}/outlook")
    @Operation(
            operationId = "lookAheadOfDraft",
            summary = "What years to come may bring if a draft is followed (coordinators)",
            description =
                    "Several seasons by the same step on expected young, and on litters drawn by lot; when gene diversity falls below a target; what"
                            + " more founders and longer generations would be worth; founders whose genes hang on few animals.")
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED, NO_SUCH_DRAFT, DRAFT_NOT_READY, BAD_PARAMETER})
    public OutlookView outlook(@RestPath String population, @RestPath UUID draft, @BeanParam OutlookAsked asked) {
        return outlooks.ofDraft(signedIn.standing(population), draft, asked.question());
    }
}
