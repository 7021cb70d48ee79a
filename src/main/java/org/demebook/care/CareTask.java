package org.demebook.care;

import java.time.LocalDate;
import java.util.UUID;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Something to do, as a source derives it.
 *
 * @param key what it comes from, such as {@code first-meal:<animalId>} or {@code next-meal:<animalId>:2026-06-29}: the
 *     same as long as it is the same task, so that a done one stays done. 1 to 200 of the characters A–Z a–z 0–9 . _ : -
 * @param animalId null when it concerns no single animal
 * @param litterId null when it concerns no litter
 * @param dueOn the day on which it is to be done; of a due window the expected day
 * @param fromOn first day on which it may be; null when it is one day
 * @param untilOn last day on which it may be; null when it is one day
 * @param what what to do, in a few words without the name of a person, of a place, or the number of the animal
 * @param why the reason, as a sentence that names the event and the figure of the profile
 */
public record CareTask(
        String key,
        CareKind kind,
        @Nullable UUID animalId,
        @Nullable UUID litterId,
        LocalDate dueOn,
        @Nullable LocalDate fromOn,
        @Nullable LocalDate untilOn,
        String what,
        String why) {

    private static final Pattern KEY = Pattern.compile("[A-Za-z0-9._:-]{1,200}");

    public CareTask {
        if (!KEY.matcher(key).matches()) {
            throw new IllegalArgumentException("the key of a care task is made of " + KEY + ", not " + key);
        }
    }
}
