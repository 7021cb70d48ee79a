package org.demebook.keeper;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;

/**
 * An invitation taken up.
 *
 * @param name sign-in name, by which other members may offer animals
 */
public record Acceptance(
        @NotNull @Size(max = 100) String secret,

        @NotNull
        @Pattern(regexp = "[A-Za-z0-9][A-Za-z0-9._-]{1,39}", message = "takes 2 to 40 letters, digits, dots, dashes")
        String name,

        @NotBlank @Size(max = 100) String fullName,
        @NotNull @Size(max = 200) String password) {
    @Override
    public String toString() {
        return "Acceptance[name=" + name + "]"; // no secret and no password in a log
    }
}
