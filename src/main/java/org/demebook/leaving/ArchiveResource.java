package org.demebook.leaving;

import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

@Path("/api/v1/populations/{population}/my-archive")
@Authenticated
@Tag(name = "Keepers")
class ArchiveResource {
    private static final String ZIP = "application/zip";

    @Inject
    SignedIn signedIn;

    @Inject
    MyArchive archive;

    @GET
    @Produces(ZIP)
    @Operation(
            operationId = "takeArchive",
            summary = "Everything that you wrote or hold, as a zip",
            description =
                    "JSON, the animals also as a sheet, the photographs as files, and SHA256SUMS over all of them;"
                            + " README.txt says what is what.")
    @APIResponse(
            responseCode = "200",
            description = "The archive",
            content = @Content(mediaType = ZIP, schema = @Schema(type = SchemaType.STRING, format = "binary")))
    @Refuses(NO_SUCH_POPULATION)
    public Response take(@RestPath String population) throws IOException {
        var asker = signedIn.asker();
        var by = signedIn.standing(population);
        return Response.ok(archive.of(asker, by), ZIP)
                .header("Content-Disposition", "attachment; filename=\"%s-my-archive.zip\"".formatted(population))
                .header("Cache-Control", "no-store")
                .build();
    }
}
