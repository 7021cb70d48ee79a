package org.demebook.sheet;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;
import static org.demebook.problem.ProblemType.IMPORT_RUNNING;
import static org.demebook.problem.ProblemType.NOT_ACCEPTABLE;
import static org.demebook.problem.ProblemType.NO_SUCH_IMPORT;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;
import static org.demebook.problem.ProblemType.UNREADABLE_SHEET;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.Variant;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.demebook.keeper.SignedIn;
import org.demebook.problem.LeftAsIs;
import org.demebook.problem.Refusal;
import org.demebook.problem.Rule;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations/{population}")
@Authenticated
@Tag(name = "Sheets")
class ImportResource {
    private static final String COLUMNS =
            "The first row names the columns, in any order: number, reference, dam, sire, sex, born, died, origin, source,"
                    + " collection, transponders, marks, notes. A sire is A (known), \"doubtful A\" (of low confidence),"
                    + " A|B or A:0.6|B:0.4 (candidates, each young on its own), \"one of A|B\" (one of them for the whole litter), none, \"none terminal 0\","
                    + " \"none central 0.5\" (parthenogenesis), or empty (unknown). What a rule blocks can be left as it is in"
                    + " the whole sheet: leave=dam-too-young&reason=…, several rules with leave several times.";

    @Inject
    SignedIn signedIn;

    @Inject
    Imports imports;

    @Inject
    Once once;

    @POST
    @Path("import-checks")
    @Consumes({Sheet.CSV, Sheet.EXCEL})
    @Produces({MediaType.APPLICATION_JSON, Sheet.CSV})
    @Operation(
            operationId = "checkImport",
            summary = "What a sheet would do, and everything that is wrong with it",
            description = "Changes nothing. " + COLUMNS)
    @RequestBody(
            required = true,
            content = {
                @Content(mediaType = Sheet.CSV, schema = @Schema(type = SchemaType.STRING)),
                @Content(mediaType = Sheet.EXCEL, schema = @Schema(type = SchemaType.STRING, format = "binary"))
            })
    @APIResponse(
            responseCode = "200",
            description = "The findings; as CSV when Accept says so",
            content = {
                @Content(mediaType = "application/json", schema = @Schema(implementation = Report.class)),
                @Content(mediaType = Sheet.CSV, schema = @Schema(type = SchemaType.STRING))
            })
    @Refuses({NO_SUCH_POPULATION, UNREADABLE_SHEET, NOT_ACCEPTABLE, BAD_PARAMETER})
    public Response check(
            @RestPath String population,
            @HeaderParam("Content-Type") String mediaType,
            @QueryParam("leave") List<String> leave,
            @QueryParam("reason") @Nullable String reason,
            @Context Request request,
            byte[] file) {
        var form =
                request.selectVariant(Variant.mediaTypes(MediaType.APPLICATION_JSON_TYPE, MediaType.valueOf(Sheet.CSV))
                        .build());
        if (form == null) {
            throw new Refusal(NOT_ACCEPTABLE, "The findings come as application/json or as text/csv.");
        }
        var report = imports.check(signedIn.standing(population), Sheet.read(file, mediaType), left(leave, reason));
        return form.getMediaType().isCompatible(MediaType.APPLICATION_JSON_TYPE)
                ? Response.ok(report, MediaType.APPLICATION_JSON_TYPE).build()
                : Response.ok(FindingsText.of(report), Sheet.CSV + ";charset=UTF-8")
                        .build();
    }

    @POST
    @Path("imports")
    @Consumes({Sheet.CSV, Sheet.EXCEL})
    @Operation(
            operationId = "startImport",
            summary = "Register the animals of a sheet, all or none",
            description =
                    "Rows about animals that are registered already are left alone when they say the same, so the same sheet may be sent again. "
                            + COLUMNS)
    @RequestBody(
            required = true,
            content = {
                @Content(mediaType = Sheet.CSV, schema = @Schema(type = SchemaType.STRING)),
                @Content(mediaType = Sheet.EXCEL, schema = @Schema(type = SchemaType.STRING, format = "binary"))
            })
    @APIResponse(
            responseCode = "202",
            description = "The import is at work; Location tells how far it is",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = ImportView.class)))
    @Refuses({NO_SUCH_POPULATION, UNREADABLE_SHEET, IMPORT_RUNNING, BAD_PARAMETER})
    public Response start(
            @RestPath String population,
            @HeaderParam("Content-Type") String mediaType,
            @QueryParam("leave") List<String> leave,
            @QueryParam("reason") @Nullable String reason,
            byte[] file) {
        var by = signedIn.standing(population);
        var sheet = Sheet.read(file, mediaType);
        var left = left(leave, reason);
        return once.answer(by.keeperId(), file, () -> {
            var started = imports.start(by, sheet, left);
            return Answer.accepted(
                    URI.create("/api/v1/populations/" + population + "/imports/" + started.id()), started);
        });
    }

    private static List<LeftAsIs> left(List<String> rules, @Nullable String reason) {
        for (var word : rules) {
            if (Rule.of(word).isEmpty()) {
                throw new Refusal(
                        BAD_PARAMETER, "There is no rule \"%s\"; write it as the finding does.".formatted(word));
            }
        }
        var said = reason == null ? "" : reason.strip();
        if (!rules.isEmpty() && (said.length() < LeftAsIs.SHORTEST_REASON || said.length() > LeftAsIs.LONGEST_REASON)) {
            throw new Refusal(
                    BAD_PARAMETER,
                    "What is left as it is needs a reason of %d to %d characters: reason=…"
                            .formatted(LeftAsIs.SHORTEST_REASON, LeftAsIs.LONGEST_REASON));
        }
        return rules.stream().map(word -> new LeftAsIs(word, said)).toList();
    }

    @GET
    @Path("imports/{id}")
    @Operation(operationId = "getImport", summary = "How far an import of yours is, or what came of it")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_IMPORT})
    public ImportView progress(@RestPath String population, @RestPath UUID id) {
        return imports.get(signedIn.standing(population), id);
    }
}
