package org.demebook.registry;

import com.fasterxml.jackson.annotation.JsonProperty;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/**
 * The figures of a population's biology that checks and predictions use; a coordinator may edit each. The defaults are
 * common practice for boas, with no published source, except the longest storage of sperm.
 *
 * @param daysFromShedToBirth from the post-ovulation shed to birth: the usual number of days
 * @param daysFromShedToBirthAtLeast earliest usual day
 * @param daysFromShedToBirthAtMost latest usual day
 * @param daysFromOvulationToBirth from ovulation to birth, or to laying
 * @param daysOfSpermStorage longest known storage of sperm; 2160 days are the 71 months of Levine, Schuett &amp; Booth
 *     (2021), PLoS ONE 16: e0252049
 * @param daysOfAgeAtFirstBirth no dam or sire is younger than this when its young are born
 * @param daysOfAgeToBreed from this age on an animal is proposed for pairing
 * @param daysBetweenLitters two litters of one dam are never closer than this
 * @param source where the figures come from, in words
 */
public record TaxonProfile(
        @Min(1) @Max(1000) @JsonProperty(defaultValue = "105")
        int daysFromShedToBirth,

        @Min(1) @Max(1000) @JsonProperty(defaultValue = "100")
        int daysFromShedToBirthAtLeast,

        @Min(1) @Max(1000) @JsonProperty(defaultValue = "120")
        int daysFromShedToBirthAtMost,

        @Min(1) @Max(1000) @JsonProperty(defaultValue = "123")
        int daysFromOvulationToBirth,

        @Min(0) @Max(5000) @JsonProperty(defaultValue = "2160")
        int daysOfSpermStorage,

        @Min(0) @Max(5000) @JsonProperty(defaultValue = "365")
        int daysOfAgeAtFirstBirth,

        @Min(0) @Max(5000) @JsonProperty(defaultValue = "1095")
        int daysOfAgeToBreed,

        @Min(0) @Max(5000) @JsonProperty(defaultValue = "150")
        int daysBetweenLitters,

        @Nullable @Size(max = 500) String source) {

    public static final TaxonProfile BOAS =
            new TaxonProfile(105, 100, 120, 123, 2160, 365, 1095, 150, "common practice, no published source");
}
