package org.demebook.care;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;
import static org.demebook.problem.ProblemType.NO_SUCH_SILENCE;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

@Path("/api/v1/populations/{population}/care-silences")
@Authenticated
@Tag(name = "Care")
class SilenceResource {
    @Inject
    SignedIn signedIn;

    @Inject
    CareTasks tasks;

    @Inject
    Once once;

    @GET
    @Operation(operationId = "listCareSilences", summary = "What you do not want to hear of")
    @Refuses(NO_SUCH_POPULATION)
    public List<SilenceView> silences(@RestPath String population) {
        return tasks.silences(signedIn.standing(population));
    }

    @POST
    @Path("{silence}/ending")
    @Operation(operationId = "endCareSilence", summary = "Hear of it again")
    @APIResponse(responseCode = "204", description = "The silence has ended")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_SILENCE, BAD_PARAMETER})
    public Response end(@RestPath String population, @RestPath UUID silence) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), null, () -> {
            tasks.endSilence(by, silence);
            return Answer.done();
        });
    }
}
