package org.demebook.litter;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.demebook.registry.TwinKind;

/**
 * Two young of a litter that came from one sac.
 *
 * @param numbers the studbook numbers of the two
 * @param kind {@code identical}: one genome; {@code unclear}: perhaps from two ova
 */
public record StatedTwins(
        @NotNull @Size(min = 2, max = 2) List<@NotNull @Size(max = 60) String> numbers,
        @NotNull TwinKind kind) {}
