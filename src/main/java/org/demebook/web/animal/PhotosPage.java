package org.demebook.web.animal;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.time.LocalDate;
import java.util.List;
import org.demebook.photo.Photos;
import org.demebook.problem.Finding;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.registry.AnimalPhotos;
import org.demebook.registry.AnimalView;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** The photographs of an animal. */
@Path("/populations/{population}/animals")
@Produces(Pages.HTML)
class PhotosPage {
    @CheckedTemplate(basePath = "animal", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance photos(AnimalView animal, Typed typed);
    }

    /** What is told with a picture. */
    record Told(
            @Nullable @Size(max = 100) String label,
            @Nullable LocalDate takenOn) {}

    @Inject
    Corrections corrections;

    @Inject
    AnimalPhotos ofAnimals;

    @Inject
    Photos photos;

    @Inject
    Forms forms;

    @Inject
    Pages pages;

    @Inject
    Visit visit;

    @GET
    @Path("{number}/photos")
    public Response form(@RestPath String population, @RestPath String number) {
        return corrections.open(
                population, number, animal -> Typed.nothing().with("takenOn", visit.getToday()), Templates::photos);
    }

    @POST
    @Path("{number}/photos")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    public Response add(
            @RestPath String population,
            @RestPath String number,
            @RestForm("photo") @Nullable FileUpload upload,
            @RestForm @Nullable String label,
            @RestForm @Nullable String takenOn) {
        var by = visit.in(population);
        var typed = Typed.nothing().with("label", label).with("takenOn", takenOn);
        return forms.attempt(
                typed,
                () -> {
                    var told = forms.read(typed, Told.class);
                    corrections.held(by, number);
                    var file = photos.clean(bytes(upload)); // slow, and so before the transaction
                    return forms.once(
                            by.keeperId(),
                            typed,
                            () -> {
                                ofAnimals.add(by, number, file, told.label(), told.takenOn());
                                return visit.getBase() + "/animals/" + number + "/photos";
                            },
                            again -> Templates.photos(corrections.held(by, number), again));
                },
                again -> Templates.photos(corrections.held(by, number), again));
    }

    private byte[] bytes(@Nullable FileUpload upload) {
        if (upload == null || upload.size() == 0) {
            var missing = pages.words(AnimalMessages.class).photoMissing();
            throw new Refusal(ProblemType.INVALID_VALUES, missing, List.of(Finding.error("photo", null, missing)));
        }
        try {
            return Files.readAllBytes(upload.uploadedFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
