package org.demebook.diary;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import org.demebook.diary.CareRecord.HealthTest;
import org.demebook.diary.CareRecord.Meal;
import org.demebook.notation.Length;
import org.demebook.notation.StatedLength;
import org.demebook.notation.StatedMass;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** A care record as it is sent: its kind, and the fields of that kind. */
public record StatedCareRecord(
        @Schema(description = "Studbook number; needed in a batch, elsewhere the address says it")
        @Nullable
        @Size(max = 60)
        String animal,

        @NotNull
        @Pattern(
                regexp = "shed|meal|measures|move|health-note|test|quarantine",
                message = "is shed, meal, measures, move, health-note, test or quarantine")
        String kind,

        @Schema(description = "The day, of a shed, a meal, measures, a move or a health note") @Nullable
        LocalDate on,

        @Schema(description = "Of a shed: whether the skin came off whole") @Nullable
        Boolean complete,

        @Schema(
                description = "Of a meal: taken (without help), assisted (teased, scented, fed by hand) or refused",
                implementation = String.class,
                enumeration = {"taken", "assisted", "refused"})
        Meal.@Nullable Outcome outcome,

        @Schema(description = "Of a meal: what was offered") @Nullable @Size(max = 200)
        String prey,

        @Schema(description = "Of a meal") @Nullable @Valid StatedMass preyMass,

        @Schema(description = "Of measures") @Nullable @Valid
        StatedMass mass,

        @Schema(description = "Of measures") @Nullable @Valid
        StatedLength length,

        @Schema(
                description = "Of measures with a length: snout-vent (the default) or total",
                implementation = String.class,
                enumeration = {"snout-vent", "total"})
        Length.@Nullable Kind lengthKind,

        @Schema(description = "Of a move: the tub or rack as you call it; yours alone, it does not go with the animal")
        @Nullable
        @Size(max = 200)
        String place,

        @Schema(
                description =
                        "Of a health note: what you saw. A note is open until it is ended, and does not go with the"
                                + " animal. It is no diagnosis: with any sign of illness see a reptile veterinarian. Reptiles may"
                                + " carry Salmonella: wash your hands; small children, pregnant, old and weakened people keep"
                                + " clear.")
        @Nullable
        @Size(max = 4000)
        String text,

        @Schema(description = "Of a test: the virus, bacterium or parasite looked for") @Nullable @Size(max = 200)
        String agent,

        @Schema(description = "Of a test: how, such as RT-PCR") @Nullable @Size(max = 200)
        String method,

        @Schema(description = "Of a test: of what, such as a swab or blood") @Nullable @Size(max = 200)
        String sample,

        @Schema(description = "Of a test: the day the sample was taken") @Nullable
        LocalDate sampledOn,

        @Schema(
                description = "Of a test",
                implementation = String.class,
                enumeration = {"negative", "positive", "unclear"})
        HealthTest.@Nullable Result result,

        @Schema(description = "Of a test: the laboratory's own number") @Nullable @Size(max = 200)
        String laboratoryReference,

        @Schema(description = "Of a test: until when it counts; nothing for 180 days from the sample") @Nullable
        LocalDate validUntil,

        @Schema(description = "Of a quarantine: its first day") @Nullable
        LocalDate from,

        @Schema(description = "Of a quarantine: its last day as planned; nothing for as long as the profile says")
        @Nullable
        LocalDate until,

        @Schema(description = "Of a health note or a quarantine: since when it is over; nothing while it is open")
        @Nullable
        LocalDate endedOn) {}
