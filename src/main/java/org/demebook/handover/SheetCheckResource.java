package org.demebook.handover;

import static org.demebook.problem.ProblemType.NO_SUCH_HANDOVER_SHEET;
import static org.demebook.problem.ProblemType.TOO_MANY_REQUESTS;

import io.vertx.core.http.HttpServerRequest;
import jakarta.annotation.security.PermitAll;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.demebook.keeper.Attempts;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

/** Where the QR code of a sheet leads to. */
@Path("/sheets")
@Tag(name = "Hand-over sheets")
class SheetCheckResource {
    private static final String HTML = "text/html;charset=UTF-8";

    @Inject
    HandoverSheets sheets;

    @Inject
    SheetPages pages;

    @Inject
    Attempts attempts;

    @GET
    @PermitAll
    @Path("{code}")
    @Produces({MediaType.APPLICATION_JSON, HTML})
    @Operation(
            operationId = "getSheetCheck",
            summary = "Whether the hand-over sheet with this code is genuine, and what the register says today",
            description = "Needs no sign-in. Tells no names, no places and no holder. Wrong codes are counted.")
    @APIResponse(
            responseCode = "200",
            description = "What whoever has the paper may know; a page for browsers",
            content = {
                @Content(mediaType = MediaType.APPLICATION_JSON, schema = @Schema(implementation = SheetCheck.class)),
                @Content(mediaType = HTML, schema = @Schema(type = SchemaType.STRING))
            })
    @Refuses({NO_SUCH_HANDOVER_SHEET, TOO_MANY_REQUESTS})
    public Response check(@RestPath String code, @Context HttpHeaders asked, @Context HttpServerRequest request) {
        var check = attempts.counted(request, () -> sheets.check(code));
        var page = asked.getAcceptableMediaTypes().stream()
                .filter(type -> !type.isWildcardType())
                .findFirst()
                .filter(MediaType.TEXT_HTML_TYPE::isCompatible)
                .isPresent();
        var answer = page
                ? Response.ok(pages.of(check), HTML).header("Content-Security-Policy", SheetPages.SECURITY_POLICY)
                : Response.ok(check, MediaType.APPLICATION_JSON_TYPE);
        return answer.header("Vary", "Accept")
                .header("Cache-Control", "no-cache")
                .build();
    }
}
