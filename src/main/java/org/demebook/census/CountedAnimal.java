package org.demebook.census;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * An animal as it was counted. Kept in the journal with the release, never published: what changed since is judged by it.
 *
 * @param number of the animal
 * @param age age class
 * @param born decade of birth
 * @param holder collection where it lives; its owner's while it is in a transfer
 * @param owner collection whose it is
 * @param region that its holder states, if all whose it is let it be counted there; null otherwise, and in entries from before
 *     there were regions
 */
record CountedAnimal(
        String number,
        String sex,
        String age,
        String born,
        UUID holder,
        UUID owner,
        @Nullable String region) {
    /** The finest class that it is in. */
    @JsonIgnore
    String baseCell() {
        return Heading.baseCell(sex, age, born);
    }

    /** Its region, or that it is not stated. */
    @JsonIgnore
    String place() {
        return region == null ? Heading.NOT_STATED : region;
    }

    CountedAnimal in(@Nullable String otherRegion) {
        return new CountedAnimal(number, sex, age, born, holder, owner, otherRegion);
    }

    /** The decade of a birth, for instance {@code 2010s}; unknown where it may be one of several. */
    static String decade(@Nullable LocalDate earliest, @Nullable LocalDate latest) {
        if (earliest == null || latest == null || earliest.getYear() / 10 != latest.getYear() / 10) {
            return Heading.UNKNOWN;
        }
        return Heading.decade(earliest.getYear());
    }
}
