package org.demebook.registry;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;

/**
 * What an animal is known by besides its number.
 *
 * @param kind {@code transponder} (ISO 11784, 15 digits), {@code mark} (in words), or {@code own-reference} (yours alone)
 */
public record IdentifierView(
        @NotNull @Pattern(regexp = "transponder|mark|own-reference", message = "is transponder, mark or own-reference")
        String kind,

        @NotNull @Size(min = 1, max = 200) String value) {}
