package org.demebook.care;

import static org.demebook.problem.ProblemType.*;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.demebook.keeper.SignedIn;
import org.demebook.problem.Refusal;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Page;
import org.demebook.rest.Refuses;
import org.demebook.rest.ShownTo;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations/{population}/care-tasks")
@Authenticated
@Tag(name = "Care")
class CareTaskResource {
    /** A page of tasks. */
    @ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
    record CareTaskPage(List<CareTaskView> items, @Nullable String next) {}

    /**
     * A task is done.
     *
     * @param on the day on which it was done; today when nothing is said
     */
    record CareCompletion(@Nullable LocalDate on) {}

    /**
     * Many tasks are done at once, such as all of a rack.
     *
     * @param keys as the list gave them
     * @param on the day on which they were done; today when nothing is said
     */
    record CareCompletions(
            @NotEmpty @Size(max = 500) List<@NotNull @Size(max = 200) String> keys,
            @Nullable LocalDate on) {}

    /** The tasks that were done. */
    @ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
    record CompletedTasks(List<CareTaskView> items) {}

    /** @param to the day on which it is to be done instead */
    record CarePostponement(@NotNull LocalDate to) {}

    /** @param scope this task alone, all of its kind for its animal, or all of its kind in the collection */
    record NewSilence(@NotNull SilenceScope scope) {}

    @Inject
    SignedIn signedIn;

    @Inject
    CareTasks tasks;

    @Inject
    Once once;

    @GET
    @Operation(
            operationId = "listCareTasks",
            summary = "What is to be done in your collections: overdue first, then by day",
            description = "For those who act for a collection of the population: what follows from the records, and"
                    + " tasks of your own. A task vanishes with the animal that it is about.")
    @APIResponse(
            responseCode = "200",
            description = "A page of tasks; the Link header leads to the next",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CareTaskPage.class)))
    @Refuses({NO_SUCH_POPULATION, BAD_PARAMETER, INVALID_VALUES})
    public Response list(
            @RestPath String population,
            @Parameter(description = "The last day that is asked for; in two weeks when nothing is said")
                    @QueryParam("until")
                    @Nullable
                    LocalDate until,
            @Parameter(
                            description =
                                    "open (when nothing is said), done (of the last 60 days, latest first) or silenced")
                    @QueryParam("state")
                    @Nullable
                    String state,
            @QueryParam("after") @Nullable String after,
            @QueryParam("limit") @Nullable Integer limit,
            @Context UriInfo uri) {
        return tasks.page(signedIn.standing(population), state(state), until, Page.after(after), Page.limit(limit))
                .response(uri);
    }

    @POST
    @Operation(operationId = "addCareTask", summary = "Write down a task of your own, once or again and again")
    @APIResponse(
            responseCode = "201",
            description = "The task",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CareTaskView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NOT_YOUR_ANIMAL,
        ANIMAL_DEAD,
        NO_COLLECTION,
        NO_SUCH_COLLECTION
    })
    public Response add(@RestPath String population, @NotNull @Valid NewCareTask task) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), task, () -> {
            var added = tasks.add(by, task);
            var address = URI.create("/api/v1/populations/" + population + "/care-tasks/" + added.key());
            return Answer.created(address, null, added);
        });
    }

    @GET
    @Path("{key}")
    @Operation(operationId = "getCareTask", summary = "One task of yours, with what was done about it")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_CARE_TASK})
    public CareTaskView task(@RestPath String population, @RestPath String key) {
        return tasks.get(signedIn.standing(population), key);
    }

    @POST
    @Path("{key}/completion")
    @Operation(operationId = "completeCareTask", summary = "It is done; with another day, the day is corrected")
    @APIResponse(
            responseCode = "200",
            description = "The task, done",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CareTaskView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_CARE_TASK, DATE_IN_FUTURE})
    public Response complete(
            @RestPath String population, @RestPath String key, @NotNull @Valid CareCompletion completion) {
        var by = signedIn.standing(population);
        return once.answer(
                by.keeperId(),
                completion,
                () -> Answer.ok(
                        null, tasks.complete(by, List.of(key), completion.on()).get(0)));
    }

    @POST
    @Path("completions")
    @Operation(
            operationId = "completeCareTasks",
            summary = "Many are done at once, such as all of a rack: all of them, or none when one is unknown")
    @APIResponse(
            responseCode = "200",
            description = "The tasks, done",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CompletedTasks.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_CARE_TASK, DATE_IN_FUTURE})
    public Response completeAll(@RestPath String population, @NotNull @Valid CareCompletions completions) {
        var by = signedIn.standing(population);
        return once.answer(
                by.keeperId(),
                completions,
                () -> Answer.ok(null, new CompletedTasks(tasks.complete(by, completions.keys(), completions.on()))));
    }

    @POST
    @Path("{key}/postponement")
    @Operation(operationId = "postponeCareTask", summary = "Move it to another day")
    @APIResponse(
            responseCode = "200",
            description = "The task on its new day",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CareTaskView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_CARE_TASK, CARE_TASK_FIXED, CARE_TASK_DONE})
    public Response postpone(
            @RestPath String population, @RestPath String key, @NotNull @Valid CarePostponement postponement) {
        var by = signedIn.standing(population);
        return once.answer(
                by.keeperId(), postponement, () -> Answer.ok(null, tasks.postpone(by, key, postponement.to())));
    }

    @POST
    @Path("{key}/silence")
    @Operation(
            operationId = "silenceCareTask",
            summary = "Do not want to hear of it, or of all of its kind",
            description = "Holds for all who act for the collection.")
    @APIResponse(
            responseCode = "200",
            description = "The task, silenced",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CareTaskView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_CARE_TASK})
    public Response silence(@RestPath String population, @RestPath String key, @NotNull @Valid NewSilence silence) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), silence, () -> Answer.ok(null, tasks.silence(by, key, silence.scope())));
    }

    @POST
    @Path("{key}/restoration")
    @Operation(
            operationId = "restoreCareTask",
            summary = "Take back that it was done; else its silences; else that it was moved")
    @APIResponse(
            responseCode = "200",
            description = "The task as it is now",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CareTaskView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_CARE_TASK})
    public Response restore(@RestPath String population, @RestPath String key) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), null, () -> Answer.ok(null, tasks.restore(by, key)));
    }

    private static TaskState state(@Nullable String word) {
        return Arrays.stream(TaskState.values())
                .filter(state -> state.name().toLowerCase(Locale.ROOT).equals(word == null ? "open" : word))
                .findAny()
                .orElseThrow(
                        () -> new Refusal(BAD_PARAMETER, "state=%s: write open, done or silenced.".formatted(word)));
    }
}
