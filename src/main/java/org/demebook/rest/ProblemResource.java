package org.demebook.rest;

import static org.demebook.problem.ProblemType.NO_SUCH_ADDRESS;

import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.util.Arrays;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

@Path("/problems")
@Tag(name = "Sign-in")
class ProblemResource {
    /** A kind of problem: what the type of a problem answer leads to. */
    @ShownTo(ShownTo.Whom.EVERYBODY)
    record ProblemKind(String type, String title, int status) {}

    @GET
    @Path("{type}")
    @PermitAll
    @Operation(operationId = "getProblemType", summary = "What a kind of problem is", description = "Needs no sign-in.")
    @Refuses(NO_SUCH_ADDRESS)
    public ProblemKind kind(@RestPath String type) {
        return Arrays.stream(ProblemType.values())
                .filter(known -> known.kebab().equals(type))
                .map(known -> new ProblemKind(known.uri(), known.title(), known.status()))
                .findFirst()
                .orElseThrow(() -> new Refusal(NO_SUCH_ADDRESS, "No problem is called \"%s\".".formatted(type)));
    }
}
