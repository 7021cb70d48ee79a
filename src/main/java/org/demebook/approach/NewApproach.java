package org.demebook.approach;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/**
 * An approach to be made. To make it is to consent to what both sides learn if the other agrees: for twelve months they may read
 * number and whereabouts of this animal.
 *
 * @param animal studbook number of an animal of yours
 * @param partner a pseudonym, as unnamed-partners answers it for that animal now
 * @param words for the other side, who learns nothing else of you: write only what they may know before they agree
 */
public record NewApproach(
        @NotBlank @Size(max = 60) String animal,
        @NotBlank @Size(max = 20) String partner,
        @Nullable @Size(max = 500) String words) {}
