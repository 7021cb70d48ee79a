package org.demebook.breeding;

import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** A record is taken back: it was not so. */
public record Withdrawal(@Nullable @Size(max = 1000) String reason) {}
