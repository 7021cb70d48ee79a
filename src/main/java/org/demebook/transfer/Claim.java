package org.demebook.transfer;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * An animal taken over with a claim code. Who is not signed in opens an account with name, fullName and password; who is
 * signed in leaves those out.
 *
 * @param code as it was given to you; case and spaces do not matter
 * @param name sign-in name, by which other members may offer animals
 * @param collection id of the collection of yours that it goes into; nothing when you have one or none
 * @param collectionLabel what to call the collection that is opened when you have none; other members do not see it
 */
public record Claim(
        @NotNull @Size(max = 60) String code,

        @Nullable
        @Pattern(regexp = "[A-Za-z0-9][A-Za-z0-9._-]{1,39}", message = "takes 2 to 40 letters, digits, dots, dashes")
        String name,

        @Nullable @Size(min = 1, max = 100) String fullName,
        @Nullable @Size(max = 200) String password,
        @Nullable UUID collection,
        @Nullable @Size(min = 1, max = 60) String collectionLabel) {
    @Override
    public String toString() {
        return "Claim[name=" + name + "]"; // no code and no password in a log
    }
}
