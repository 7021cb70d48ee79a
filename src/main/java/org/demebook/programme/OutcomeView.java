package org.demebook.programme;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonValue;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * What came of a plan, held against it, by the births that the reader may see: for coordinators of all of it, for everybody else of
 * the litters of their own animals.
 *
 * @param geneDiversityExpected after the season, as the plan had it, in [0, 1]; for coordinators
 * @param geneDiversityNow of the living, by what the reader may see or have computed with, in [0, 1]; absent when none is alive
 * @param youngReckonedWith of these litters: of each a chance times a number
 * @param youngAlive of these litters, that were registered and live
 * @param agreed how many of these litters both keepers accepted
 * @param born how many of these litters were born as planned
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record OutcomeView(
        UUID plan,
        @Nullable Double geneDiversityExpected,
        @Nullable Double geneDiversityNow,
        double youngReckonedWith,
        int youngAlive,
        int agreed,
        int born,
        List<Came> litters) {

    /** What is seen of a litter. */
    public enum What {
        /** None so far, within a year of the day on which the two were to be put together. */
        NOT_YET,
        /** Of both, as planned. */
        BORN,
        /** She bore, and not of him for all that is stated. */
        OTHER_SIRE,
        /** None in a year. */
        NONE;

        @JsonValue
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * @param dam studbook number; absent where the reader may not see it
     * @param sire likewise
     * @param state what both keepers answered, together
     * @param what what is seen of it
     * @param bornOn the day, or the first on which it may have been; absent where it is not known
     * @param young that were registered, and whose parents the reader may see
     * @param alive of them
     */
    public record Came(
            UUID litter,
            @Nullable String dam,
            @Nullable String sire,
            LitterState state,

            @Schema(
                    implementation = String.class,
                    enumeration = {"not-yet", "born", "other-sire", "none"})
            What what,

            @Nullable LocalDate bornOn,
            @JsonInclude(JsonInclude.Include.NON_DEFAULT) int young,
            @JsonInclude(JsonInclude.Include.NON_DEFAULT) int alive) {}
}
