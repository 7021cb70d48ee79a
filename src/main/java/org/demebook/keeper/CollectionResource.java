package org.demebook.keeper;

import static org.demebook.problem.ProblemType.ALREADY_MEMBER;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_SUCH_KEEPER;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;
import static org.demebook.problem.ProblemType.UNAVAILABLE;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
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
@Tag(name = "Keepers")
class CollectionResource {
    @Inject
    SignedIn signedIn;

    @Inject
    Keepers keepers;

    @Inject
    Accounts accounts;

    @Inject
    Once once;

    @GET
    @Path("collections")
    @Operation(operationId = "listCollections", summary = "The collections that you act for")
    @Refuses(NO_SUCH_POPULATION)
    public List<CollectionView> collections(@RestPath String population) {
        return keepers.collections(signedIn.standing(population));
    }

    @POST
    @Path("collections")
    @Operation(operationId = "openCollection", summary = "Open a collection")
    @APIResponse(
            responseCode = "201",
            description = "The collection is open",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CollectionView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_KEEPER})
    public Response open(@RestPath String population, @NotNull @Valid NewCollection collection) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), collection, () -> {
            var opened = keepers.open(by, collection);
            return Answer.created(URI.create("/api/v1/populations/" + population + "/collections"), null, opened);
        });
    }

    @GET
    @Path("members")
    @Operation(operationId = "listMembers", summary = "The members of a population (coordinators)")
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED})
    public List<MemberView> members(@RestPath String population) {
        return keepers.members(signedIn.standing(population));
    }

    @POST
    @Path("members")
    @Operation(
            operationId = "admitMember",
            summary = "Take a keeper of this node in, or change their role (coordinators)")
    @APIResponse(
            responseCode = "200",
            description = "The keeper's place in the population",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = MemberView.class)))
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED, NO_SUCH_KEEPER, ALREADY_MEMBER, UNAVAILABLE})
    public Response admit(@RestPath String population, @NotNull @Valid MemberView member) {
        var by = signedIn.standing(population);
        accounts.expect(by, member.name());
        return once.answer(by.keeperId(), member, () -> Answer.ok(null, keepers.admit(by, member)));
    }

    @DELETE
    @Path("members/{name}")
    @Operation(operationId = "endMembership", summary = "End a membership: your own, or anybody's as a coordinator")
    @APIResponse(responseCode = "204", description = "The membership has ended; the animals stay in the register")
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED, NO_SUCH_KEEPER})
    public Response dismiss(@RestPath String population, @RestPath String name) {
        keepers.dismiss(signedIn.standing(population), name);
        return Response.noContent().build();
    }
}
