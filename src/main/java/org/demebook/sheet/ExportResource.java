package org.demebook.sheet;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import java.util.Locale;
import org.demebook.keeper.SignedIn;
import org.demebook.problem.Refusal;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations/{population}/export")
@Authenticated
@Tag(name = "Sheets")
class ExportResource {
    @Inject
    SignedIn signedIn;

    @Inject
    Exports exports;

    @GET
    @Produces({Sheet.CSV, Sheet.EXCEL})
    @Operation(
            operationId = "exportAnimals",
            summary = "The animals of a population as a sheet",
            description =
                    "In the columns of an import, by number: all columns for the animals in your collections, number,"
                            + " dam, sire, sex, born and origin for the others. A cell that would begin with = + - or @ has an"
                            + " apostrophe before it. The same register gives the same bytes.")
    @APIResponse(
            responseCode = "200",
            description = "The sheet",
            content = {
                @Content(mediaType = Sheet.CSV, schema = @Schema(type = SchemaType.STRING)),
                @Content(mediaType = Sheet.EXCEL, schema = @Schema(type = SchemaType.STRING, format = "binary"))
            })
    @Refuses({NO_SUCH_POPULATION, BAD_PARAMETER})
    public Response export(
            @RestPath String population,
            @Parameter(description = "csv (when nothing is said) or xlsx") @QueryParam("format") @Nullable
                    String format,
            @Parameter(description = "true: only the animals in your collections") @QueryParam("mine") @Nullable
                    Boolean mine) {
        var by = signedIn.standing(population);
        var kind = format(format == null ? "csv" : format);
        var name = "%s-animals.%s".formatted(population, kind.name().toLowerCase(Locale.ROOT));
        return Response.ok(exports.export(by, kind, Boolean.TRUE.equals(mine)), kind.mediaType)
                .header("Content-Disposition", "attachment; filename=\"" + name + "\"")
                .build();
    }

    private static Exports.Format format(String word) {
        return switch (word) {
            case "csv" -> Exports.Format.CSV;
            case "xlsx" -> Exports.Format.XLSX;
            default -> throw new Refusal(BAD_PARAMETER, "format=%s: it is csv or xlsx.".formatted(word));
        };
    }
}
