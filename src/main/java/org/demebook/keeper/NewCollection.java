package org.demebook.keeper;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A collection to be opened.
 *
 * @param label what you call it; other members do not see it
 * @param sharedWith sign-in names of further keepers of the same household
 */
public record NewCollection(
        @NotBlank @Size(max = 60) String label,
        @Size(max = 10) List<@NotNull @Size(max = 40) String> sharedWith) {
    public NewCollection(String label, @Nullable List<String> sharedWith) {
        this.label = label;
        this.sharedWith = sharedWith == null ? List.of() : List.copyOf(sharedWith);
    }
}
