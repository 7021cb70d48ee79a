package org.demebook.taxon;

import com.fasterxml.jackson.annotation.JsonProperty;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The figures of a population's biology that checks, predictions and prompts use. A coordinator may edit each, and says
 * where it comes from. The defaults are common practice for small island boas, with no published source, where {@code
 * sources} names none.
 *
 * @param sexSystem which sex chromosomes decide
 * @param gestation from the breeding signs to the birth or the hatching
 * @param litter what a litter usually is
 * @param breeding ages and rests
 * @param rearing from birth to the day a young may leave
 * @param daysOfQuarantine a newcomer is kept apart as long
 * @param sources where a figure comes from, by its name such as {@code gestation.daysFromShedToBirth}; its own words
 */
public record TaxonProfile(
        @NotNull SexSystem sexSystem,
        @NotNull @Valid Gestation gestation,
        @NotNull @Valid UsualLitter litter,
        @NotNull @Valid Breeding breeding,
        @NotNull @Valid Rearing rearing,

        @Min(0) @Max(1000) @JsonProperty(defaultValue = "90")
        int daysOfQuarantine,

        @Nullable @Size(max = 60) Map<@Size(max = 60) String, @Size(max = 500) String> sources) {

    /**
     * @param daysFromShedToBirth from the post-ovulation shed: the usual number of days
     * @param daysFromShedToBirthAtLeast first day of the usual window
     * @param daysFromShedToBirthAtMost last day of the usual window
     * @param daysFromShedToBirthEarliest from this day on a birth is to be reckoned with
     * @param daysFromShedToBirthOverdue from this day on she is overdue
     * @param daysFromOvulationToBirth the usual number of days
     * @param daysFromOvulationToBirthAtLeast first day of the usual window
     * @param daysFromOvulationToBirthAtMost last day of the usual window
     * @param daysFromLayingToHatching of egg-layers
     * @param spreadBetweenFemales standard deviation, in days, of the females' own means
     * @param spreadWithinFemale standard deviation, in days, of one female's gestations
     */
    public record Gestation(
            @Min(1) @Max(1000) @JsonProperty(defaultValue = "105")
            int daysFromShedToBirth,

            @Min(1) @Max(1000) @JsonProperty(defaultValue = "100")
            int daysFromShedToBirthAtLeast,

            @Min(1) @Max(1000) @JsonProperty(defaultValue = "120")
            int daysFromShedToBirthAtMost,

            @Min(1) @Max(1000) @JsonProperty(defaultValue = "90")
            int daysFromShedToBirthEarliest,

            @Min(1) @Max(1000) @JsonProperty(defaultValue = "121")
            int daysFromShedToBirthOverdue,

            @Min(1) @Max(1000) @JsonProperty(defaultValue = "123")
            int daysFromOvulationToBirth,

            @Min(1) @Max(1000) @JsonProperty(defaultValue = "115")
            int daysFromOvulationToBirthAtLeast,

            @Min(1) @Max(1000) @JsonProperty(defaultValue = "136")
            int daysFromOvulationToBirthAtMost,

            @Min(1) @Max(1000) @JsonProperty(defaultValue = "60")
            int daysFromLayingToHatching,

            @Min(1) @Max(100) @JsonProperty(defaultValue = "7")
            int spreadBetweenFemales,

            @Min(1) @Max(100) @JsonProperty(defaultValue = "4")
            int spreadWithinFemale) {}

    /**
     * @param ovaAtLeast fewer are worth a second look
     * @param ovaAtMost more are worth a second look
     * @param neonateMassGrams usual
     * @param neonateLengthMillimetres usual, from snout to vent
     */
    public record UsualLitter(
            @Min(1) @Max(500) @JsonProperty(defaultValue = "4")
            int ovaAtLeast,

            @Min(1) @Max(500) @JsonProperty(defaultValue = "20")
            int ovaAtMost,

            @Min(1) @Max(5000) @JsonProperty(defaultValue = "30")
            int neonateMassGrams,

            @Min(1) @Max(5000) @JsonProperty(defaultValue = "400")
            int neonateLengthMillimetres) {}

    /**
     * @param daysOfSpermStorage longest known storage of sperm
     * @param daysOfSpermStorageUsual longer than this is possible but rare
     * @param daysOfAgeAtFirstBirth no dam or sire is younger than this when its young are born
     * @param daysOfAgeAtFirstBirthUsual a dam younger than this is worth a second look
     * @param daysOfAgeToBreed from this age on an animal is proposed for pairing
     * @param daysBetweenLitters two litters of one dam are never closer than this
     * @param daysBetweenLittersUsual closer than this is worth a second look; a dam rests so long from birth to birth
     * @param daysOfAgeAtLastLitter how old an animal is when it breeds no longer, as plans reckon; 18 years when nothing is said
     * @param testsBeforePairing the agents that an animal has to be tested for before a pairing; with none, the latest test for
     *     each agent that it was ever tested for has to count
     */
    public record Breeding(
            @Min(0) @Max(5000) @JsonProperty(defaultValue = "2160")
            int daysOfSpermStorage,

            @Min(0) @Max(5000) @JsonProperty(defaultValue = "365")
            int daysOfSpermStorageUsual,

            @Min(0) @Max(5000) @JsonProperty(defaultValue = "365")
            int daysOfAgeAtFirstBirth,

            @Min(0) @Max(5000) @JsonProperty(defaultValue = "730")
            int daysOfAgeAtFirstBirthUsual,

            @Min(0) @Max(5000) @JsonProperty(defaultValue = "1095")
            int daysOfAgeToBreed,

            @Min(0) @Max(5000) @JsonProperty(defaultValue = "150")
            int daysBetweenLitters,

            @Min(0) @Max(5000) @JsonProperty(defaultValue = "300")
            int daysBetweenLittersUsual,

            @Nullable @Min(0) @Max(40000) @JsonProperty(defaultValue = "6570")
            Integer daysOfAgeAtLastLitter,

            @Nullable @Size(max = 20) List<@NotBlank @Size(max = 60) String> testsBeforePairing) {
        private static final int DAYS_OF_AGE_AT_LAST_LITTER = 6570;

        public Breeding {
            daysOfAgeAtLastLitter = daysOfAgeAtLastLitter == null ? DAYS_OF_AGE_AT_LAST_LITTER : daysOfAgeAtLastLitter;
            testsBeforePairing = testsBeforePairing == null ? List.of() : List.copyOf(testsBeforePairing);
        }
    }

    /**
     * @param daysToFirstShedAtLeast usual, from birth
     * @param daysToFirstShedAtMost usual, from birth
     * @param daysToFirstShedLate no shed until this day is worth a second look
     * @param daysToFirstMealAtLeast usual, from birth
     * @param daysToFirstMealAtMost usual, from birth
     * @param daysBetweenMeals of a young
     * @param shedsToLeave so many before it leaves
     * @param mealsToLeave so many in a row, taken alone, before it leaves
     * @param daysOfAgeToLeave it is as old when it leaves
     * @param daysFromMealToLeave its last meal is as long ago
     */
    public record Rearing(
            @Min(0) @Max(1000) @JsonProperty(defaultValue = "7")
            int daysToFirstShedAtLeast,

            @Min(0) @Max(1000) @JsonProperty(defaultValue = "14")
            int daysToFirstShedAtMost,

            @Min(0) @Max(1000) @JsonProperty(defaultValue = "21")
            int daysToFirstShedLate,

            @Min(0) @Max(1000) @JsonProperty(defaultValue = "10")
            int daysToFirstMealAtLeast,

            @Min(0) @Max(1000) @JsonProperty(defaultValue = "21")
            int daysToFirstMealAtMost,

            @Min(1) @Max(1000) @JsonProperty(defaultValue = "7")
            int daysBetweenMeals,

            @Min(0) @Max(100) @JsonProperty(defaultValue = "1")
            int shedsToLeave,

            @Min(0) @Max(100) @JsonProperty(defaultValue = "4")
            int mealsToLeave,

            @Min(0) @Max(1000) @JsonProperty(defaultValue = "56")
            int daysOfAgeToLeave,

            @Min(0) @Max(100) @JsonProperty(defaultValue = "3")
            int daysFromMealToLeave) {}

    public static final TaxonProfile BOAS = new TaxonProfile(
            SexSystem.XX_XY,
            new Gestation(105, 100, 120, 90, 121, 123, 115, 136, 60, 7, 4),
            new UsualLitter(4, 20, 30, 400),
            new Breeding(2160, 365, 365, 730, 1095, 150, 300, 6570, List.of()),
            new Rearing(7, 14, 21, 10, 21, 7, 1, 4, 56, 3),
            90,
            Map.of(
                    "sexSystem",
                    "Boa imperator: Gamble et al. (2017), Curr. Biol. 27: 2148 (abstract)",
                    "breeding.daysOfSpermStorage",
                    "71 months: Levine, Schuett & Booth (2021), PLoS ONE 16: e0252049",
                    "rearing.daysToFirstShedAtMost",
                    "general pages on newborn snakes: 7 to 14 days"));

    public TaxonProfile {
        sources = sources == null ? Map.of() : sources;
    }
}
