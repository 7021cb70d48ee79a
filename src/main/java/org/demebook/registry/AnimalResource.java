package org.demebook.registry;

import static org.demebook.problem.ProblemType.*;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import org.demebook.keeper.SignedIn;
import org.demebook.notation.Sex;
import org.demebook.problem.Refusal;
import org.demebook.registry.Corrections.Description;
import org.demebook.registry.Corrections.StatedDeath;
import org.demebook.registry.Corrections.StatedParentage;
import org.demebook.registry.Corrections.StatedSex;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Page;
import org.demebook.rest.Refuses;
import org.demebook.rest.Revision;
import org.demebook.rest.ShownTo;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations/{population}/animals")
@Authenticated
@Tag(name = "Animals")
class AnimalResource {
    /** A page of animals. */
    @ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
    record AnimalPage(
            java.util.List<AnimalView> items, @Nullable String next) {}

    @Inject
    SignedIn signedIn;

    @Inject
    Animals animals;

    @Inject
    Corrections corrections;

    @Inject
    Once once;

    @GET
    @Operation(operationId = "listAnimals", summary = "The animals of a population, by number")
    @APIResponse(
            responseCode = "200",
            description = "A page of animals; the Link header leads to the next",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = AnimalPage.class)))
    @Refuses({NO_SUCH_POPULATION, BAD_PARAMETER})
    public Response list(
            @RestPath String population,
            @QueryParam("sex") @Nullable String sex,
            @QueryParam("alive") @Nullable Boolean alive,
            @QueryParam("mine") @Nullable Boolean mine,
            @QueryParam("after") @Nullable String after,
            @QueryParam("limit") @Nullable Integer limit,
            @Context UriInfo uri) {
        var by = signedIn.standing(population);
        return animals.page(by, sex(sex), alive, Boolean.TRUE.equals(mine), Page.after(after), Page.limit(limit))
                .response(uri);
    }

    @POST
    @Operation(
            operationId = "registerAnimal",
            summary = "Register an animal that no litter of this register brought",
            description = "A founder, or an animal from outside. Young of a litter are registered with their litter.")
    @APIResponse(
            responseCode = "201",
            description = "The animal, with its studbook number",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = Registered.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_COLLECTION,
        NO_SUCH_COLLECTION,
        NO_SUCH_PARENT,
        MISTYPED_NUMBER,
        DATE_IN_FUTURE,
        DAM_NOT_FEMALE,
        SIRE_NOT_MALE,
        BORN_BEFORE_PARENT,
        DAM_DIED_BEFORE_BIRTH,
        DAM_TOO_YOUNG,
        SIRE_TOO_YOUNG,
        FOUNDER_WITH_PARENTS,
        DIED_BEFORE_BIRTH,
        CONTRADICTORY_PARENTAGE,
        INVALID_TRANSPONDER,
        TRANSPONDER_TAKEN,
        REFERENCE_TAKEN
    })
    public Response register(@RestPath String population, @NotNull @Valid NewAnimal animal) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), animal, () -> {
            var registered = animals.register(by, animal);
            return Answer.created(
                    address(population, registered.animal()),
                    registered.animal().revision(),
                    registered);
        });
    }

    @GET
    @Path("{number}")
    @Operation(operationId = "getAnimal", summary = "One animal")
    @APIResponse(
            responseCode = "200",
            description = "The animal; the ETag is wanted for changes",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = AnimalView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER})
    public Response animal(@RestPath String population, @RestPath String number) {
        return tagged(animals.get(signedIn.standing(population), number));
    }

    @PUT
    @Path("{number}/parentage")
    @Operation(operationId = "stateParentage", summary = "State the parents as they are known now (the holder)")
    @APIResponse(
            responseCode = "200",
            description = "The animal with its parents",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = Registered.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NOT_YOUR_ANIMAL,
        REVISION_MISSING,
        REVISION_OUTDATED,
        NO_SUCH_PARENT,
        OWN_ANCESTOR,
        DAM_NOT_FEMALE,
        SIRE_NOT_MALE,
        BORN_BEFORE_PARENT,
        DAM_DIED_BEFORE_BIRTH,
        DAM_TOO_YOUNG,
        SIRE_TOO_YOUNG,
        FOUNDER_WITH_PARENTS,
        CONTRADICTORY_PARENTAGE
    })
    public Response parentage(
            @RestPath String population,
            @RestPath String number,
            @HeaderParam("If-Match") @Nullable String ifMatch,
            @NotNull @Valid StatedParentage stated) {
        return tagged(corrections.parentage(signedIn.standing(population), number, ifMatch, stated));
    }

    @PUT
    @Path("{number}/sex")
    @Operation(operationId = "determineSex", summary = "Say which sex it was found to be (the holder)")
    @APIResponse(
            responseCode = "200",
            description = "The animal with its sex",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = Registered.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NOT_YOUR_ANIMAL,
        REVISION_MISSING,
        REVISION_OUTDATED,
        DATE_IN_FUTURE,
        SEX_CONTRADICTS_YOUNG
    })
    public Response sex(
            @RestPath String population,
            @RestPath String number,
            @HeaderParam("If-Match") @Nullable String ifMatch,
            @NotNull @Valid StatedSex stated) {
        return tagged(corrections.sex(signedIn.standing(population), number, ifMatch, stated));
    }

    @PUT
    @Path("{number}/death")
    @Operation(operationId = "reportDeath", summary = "Report a death, or correct its report (the holder)")
    @APIResponse(
            responseCode = "200",
            description = "The animal, dead",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = Registered.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NOT_YOUR_ANIMAL,
        REVISION_MISSING,
        REVISION_OUTDATED,
        DATE_IN_FUTURE,
        DIED_BEFORE_BIRTH,
        DIED_ALREADY,
        DEAD_BEFORE_ITS_YOUNG,
        ANIMAL_ELSEWHERE,
        NODE_FENCED
    })
    public Response death(
            @RestPath String population,
            @RestPath String number,
            @HeaderParam("If-Match") @Nullable String ifMatch,
            @NotNull @Valid StatedDeath stated) {
        return tagged(corrections.death(signedIn.standing(population), number, ifMatch, stated));
    }

    @DELETE
    @Path("{number}/death")
    @Operation(operationId = "withdrawDeath", summary = "Take back a death that was reported by mistake (the holder)")
    @APIResponse(
            responseCode = "200",
            description = "The animal, alive",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = AnimalView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NOT_YOUR_ANIMAL,
        REVISION_MISSING,
        REVISION_OUTDATED,
        ANIMAL_DEAD
    })
    public Response alive(
            @RestPath String population, @RestPath String number, @HeaderParam("If-Match") @Nullable String ifMatch) {
        return tagged(corrections.alive(signedIn.standing(population), number, ifMatch));
    }

    @PUT
    @Path("{number}/description")
    @Operation(operationId = "describeAnimal", summary = "Birth, origin and notes as they are known now (the holder)")
    @APIResponse(
            responseCode = "200",
            description = "The animal as it is described now",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = Registered.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NOT_YOUR_ANIMAL,
        REVISION_MISSING,
        REVISION_OUTDATED,
        DATE_IN_FUTURE,
        DIED_BEFORE_BIRTH,
        BORN_BEFORE_PARENT,
        DAM_DIED_BEFORE_BIRTH,
        DAM_TOO_YOUNG,
        SIRE_TOO_YOUNG,
        FOUNDER_WITH_PARENTS
    })
    public Response describe(
            @RestPath String population,
            @RestPath String number,
            @HeaderParam("If-Match") @Nullable String ifMatch,
            @NotNull @Valid Description stated) {
        return tagged(corrections.description(signedIn.standing(population), number, ifMatch, stated));
    }

    @POST
    @Path("{number}/identifiers")
    @Operation(operationId = "addIdentifier", summary = "Add a transponder, a mark or your own reference (the holder)")
    @APIResponse(
            responseCode = "200",
            description = "The animal with its identifiers",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = Registered.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NOT_YOUR_ANIMAL,
        INVALID_TRANSPONDER,
        TRANSPONDER_TAKEN,
        REFERENCE_TAKEN
    })
    public Response addIdentifier(
            @RestPath String population, @RestPath String number, @NotNull @Valid NewIdentifier identifier) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), identifier, () -> {
            var added = corrections.addIdentifier(by, number, identifier);
            return Answer.ok(added.animal().revision(), added);
        });
    }

    @DELETE
    @Path("{number}/identifiers/{kind}/{value}")
    @Operation(operationId = "endIdentifier", summary = "The animal carries it no longer (the holder)")
    @APIResponse(
            responseCode = "200",
            description = "The animal with what it still carries",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = AnimalView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_YOUR_ANIMAL, REVISION_MISSING, REVISION_OUTDATED
    })
    public Response endIdentifier(
            @RestPath String population,
            @RestPath String number,
            @RestPath String kind,
            @RestPath String value,
            @HeaderParam("If-Match") @Nullable String ifMatch) {
        var identifier = new IdentifierView(kind, value);
        return tagged(corrections.endIdentifier(signedIn.standing(population), number, ifMatch, identifier));
    }

    private static @Nullable Sex sex(@Nullable String word) {
        try {
            return word == null ? null : Sex.parse(word);
        } catch (IllegalArgumentException e) {
            throw new Refusal(BAD_PARAMETER, "sex=%s: %s.".formatted(word, e.getMessage()));
        }
    }

    private static Response tagged(AnimalView animal) {
        return animal.revision() == null
                ? Revision.taggedByContent(animal)
                : Revision.tagged(animal, animal.revision());
    }

    private static Response tagged(Registered registered) {
        return Revision.tagged(registered, registered.animal().revision());
    }

    private static URI address(String population, AnimalView animal) {
        return URI.create("/api/v1/populations/" + population + "/animals/" + animal.number());
    }
}
