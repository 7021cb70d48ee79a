package org.demebook.registry;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.demebook.problem.LeftAsIs;
import org.jspecify.annotations.Nullable;

/**
 * What an animal is known by from now on.
 *
 * @param kind {@code transponder}, {@code mark} (in words), or {@code own-reference} (yours alone)
 * @param value of a transponder 15 digits (ISO 11784), or 9 or 10 digits or letters from A to F of an older tag; spaces,
 *     dashes and dots do not count
 * @param leave what is as it is although a rule speaks against it
 */
public record NewIdentifier(
        @NotNull @Pattern(regexp = "transponder|mark|own-reference", message = "is transponder, mark or own-reference")
        String kind,

        @NotNull @Size(min = 1, max = 200) String value,
        @Nullable @Size(max = 20) List<@NotNull @Valid LeftAsIs> leave) {
    IdentifierView identifier() {
        return new IdentifierView(kind, value);
    }
}
