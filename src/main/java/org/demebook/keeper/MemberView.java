package org.demebook.keeper;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.demebook.rest.ShownTo;

/** A keeper's place in a population. */
@ShownTo(ShownTo.Whom.MEMBERS)
public record MemberView(
        @NotBlank @Size(max = 40) String name, @NotNull Role role) {}
