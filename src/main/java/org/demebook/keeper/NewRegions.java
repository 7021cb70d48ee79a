package org.demebook.keeper;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The regions of a population from now on, all of them.
 *
 * @param names in the order in which they are published; each a large part of where keepers live, never a place
 */
public record NewRegions(
        @NotNull @Size(max = NewRegions.MOST)
        List<
                        @NotNull @NotBlank @Size(max = NewRegions.LONGEST)
                        @Pattern(
                                regexp = NewRegions.NAME,
                                message = "begins with none of = + - @, and has no middle dot and no line break")
                        String>
                names) {
    static final int MOST = 12;
    static final int LONGEST = 40;

    /** A sheet must not take it for a formula, and the middle dot parts the names of counts. */
    static final String NAME = "[^·\\x00-\\x1f=+@-][^·\\x00-\\x1f]*";

    public NewRegions(@Nullable List<String> names) {
        this.names = names == null
                ? null
                : names.stream().map(name -> name == null ? null : name.strip()).toList();
    }
}
