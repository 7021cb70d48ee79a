package org.demebook.incubation;

import static org.demebook.problem.ProblemType.*;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.demebook.incubation.NewIncubation.NewReading;
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

@Path("/api/v1/populations/{population}")
@Authenticated
@Tag(name = "Breeding")
class IncubationResource {
    @Inject
    SignedIn signedIn;

    @Inject
    Incubations incubations;

    @Inject
    Once once;

    @GET
    @Path("animals/{number}/incubations")
    @Operation(
            operationId = "listIncubations",
            summary = "The clutches of a female that were incubated in your collections, or all if you hold her")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER})
    public List<IncubationView> list(@RestPath String population, @RestPath String number) {
        return incubations.of(signedIn.standing(population), number);
    }

    @POST
    @Path("animals/{number}/incubations")
    @Operation(
            operationId = "startIncubation",
            summary = "Record that the eggs of a female that you hold are incubated")
    @APIResponse(
            responseCode = "201",
            description = "The incubation",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = IncubationView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_YOUR_ANIMAL, NOT_EGG_LAYING, DATE_IN_FUTURE})
    public Response start(
            @RestPath String population, @RestPath String number, @NotNull @Valid NewIncubation incubation) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), incubation, () -> {
            var started = incubations.start(by, number, incubation);
            return Answer.created(
                    URI.create("/api/v1/populations/" + population + "/incubations/" + started.id()),
                    started.revision(),
                    started);
        });
    }

    @GET
    @Path("incubations/{id}")
    @Operation(operationId = "getIncubation", summary = "One incubation with its readings")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_INCUBATION, BAD_PARAMETER})
    public IncubationView incubation(@RestPath String population, @RestPath UUID id) {
        return incubations.get(signedIn.standing(population), id);
    }

    @POST
    @Path("incubations/{id}/readings")
    @Operation(operationId = "readIncubator", summary = "Record what the thermometer in an incubator shows")
    @APIResponse(
            responseCode = "200",
            description = "The incubation, with what the reading says against the set point",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = IncubationView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_INCUBATION, DATE_IN_FUTURE, BAD_PARAMETER})
    public Response read(@RestPath String population, @RestPath UUID id, @NotNull @Valid NewReading reading) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), reading, () -> {
            var read = incubations.read(by, id, reading);
            return Answer.ok(read.revision(), read);
        });
    }
}
