package org.demebook.web.litter;

import static org.demebook.problem.ProblemType.INVALID_VALUES;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.MultivaluedHashMap;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.UUID;
import org.demebook.keeper.Standing;
import org.demebook.litter.LitterPhotos;
import org.demebook.photo.Moment;
import org.demebook.photo.Photos;
import org.demebook.problem.Finding;
import org.demebook.problem.Refusal;
import org.demebook.web.FrameMessages;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** Photographs of a litter, as a form sends them. */
@ApplicationScoped
class LitterPictures {
    private static final int LONGEST_LABEL = 100;

    /** What a form sends. */
    record Upload(
            @Nullable FileUpload photo,
            @Nullable String moment,
            @Nullable String label,
            @Nullable String takenOn) {
        Typed typed() {
            return Typed.of(new MultivaluedHashMap<>())
                    .with("moment", moment)
                    .with("label", label)
                    .with("takenOn", takenOn);
        }
    }

    @Inject
    Photos photos;

    @Inject
    LitterPhotos ofLitters;

    @Inject
    Pages pages;

    void add(Standing by, UUID litter, Upload upload) {
        var words = pages.words(LitterMessages.class);
        if (upload.photo() == null || upload.photo().size() == 0) {
            throw wrong("photo", null, words.choosePhoto());
        }
        var label = upload.label() == null || upload.label().isBlank()
                ? null
                : upload.label().strip();
        if (label != null && label.length() > LONGEST_LABEL) {
            throw wrong("label", label, words.labelTooLong());
        }
        var file = photos.clean(bytes(upload.photo()));
        ofLitters.add(by, litter, moment(upload.moment()), file, label, takenOn(upload.takenOn()));
    }

    private static Moment moment(@Nullable String moment) {
        return moment == null || moment.isBlank() ? Moment.BEFORE_SEPARATION : Moment.parse(moment);
    }

    private @Nullable LocalDate takenOn(@Nullable String takenOn) {
        try {
            return takenOn == null || takenOn.isBlank() ? null : LocalDate.parse(takenOn.strip());
        } catch (DateTimeParseException e) {
            throw wrong("takenOn", takenOn, pages.words(FrameMessages.class).notADay());
        }
    }

    private static byte[] bytes(FileUpload photo) {
        try {
            return Files.readAllBytes(photo.uploadedFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Refusal wrong(String field, @Nullable String value, String message) {
        return new Refusal(
                INVALID_VALUES,
                pages.words(FrameMessages.class).lookAtFields(),
                List.of(Finding.error(field, value, message)));
    }
}
