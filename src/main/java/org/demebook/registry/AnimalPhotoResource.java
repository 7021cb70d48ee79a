package org.demebook.registry;

import static org.demebook.problem.ProblemType.MISTYPED_NUMBER;
import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_PHOTO;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;
import static org.demebook.problem.ProblemType.UNREADABLE_PHOTO;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.LocalDate;
import java.util.UUID;
import org.demebook.keeper.SignedIn;
import org.demebook.photo.PhotoView;
import org.demebook.photo.Photos;
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

@Path("/api/v1/populations/{population}/animals/{number}/photos")
@Authenticated
@Tag(name = "Animals")
class AnimalPhotoResource {
    @Inject
    SignedIn signedIn;

    @Inject
    Photos photos;

    @Inject
    AnimalPhotos ofAnimals;

    @Inject
    Once once;

    @POST
    @Consumes({"image/jpeg", "image/png"})
    @Operation(
            operationId = "addPhoto",
            summary = "Add a photograph (the holder)",
            description = "JPEG or PNG, at most 20 MiB and 40 megapixels. Position, camera data and every other hidden"
                    + " text are taken out before anything is stored.")
    @RequestBody(
            required = true,
            content = {
                @Content(mediaType = "image/jpeg", schema = @Schema(type = SchemaType.STRING, format = "binary")),
                @Content(mediaType = "image/png", schema = @Schema(type = SchemaType.STRING, format = "binary"))
            })
    @APIResponse(
            responseCode = "201",
            description = "The photograph as it was stored",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = PhotoView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_YOUR_ANIMAL, UNREADABLE_PHOTO})
    public Response add(
            @RestPath String population,
            @RestPath String number,
            @QueryParam("label") @Nullable @Size(max = 100) String label,
            @QueryParam("takenOn") @Nullable LocalDate takenOn,
            byte[] upload) {
        var by = signedIn.standing(population);
        var file = photos.clean(upload);
        return once.answer(by.keeperId(), upload, () -> {
            var photo = ofAnimals.add(by, number, file, label, takenOn);
            return Answer.created(
                    URI.create("/api/v1/populations/" + population + "/animals/" + number + "/photos/" + photo.id()),
                    null,
                    photo);
        });
    }

    @GET
    @Path("{photo}")
    @Produces("image/jpeg")
    @Operation(operationId = "getPhoto", summary = "A picture (holder and owner)")
    @APIResponse(
            responseCode = "200",
            description = "The picture",
            content = @Content(mediaType = "image/jpeg", schema = @Schema(type = SchemaType.STRING, format = "binary")))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NO_SUCH_PHOTO})
    public Response picture(
            @RestPath String population,
            @RestPath String number,
            @RestPath UUID photo,
            @QueryParam("thumbnail") @Nullable Boolean thumbnail) {
        return Photos.sent(
                ofAnimals.bytes(signedIn.standing(population), number, photo, Boolean.TRUE.equals(thumbnail)));
    }
}
