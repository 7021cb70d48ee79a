package org.demebook.transfer;

import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** A refusal or a withdrawal. Both sides see the reason. */
public record Ending(@Nullable @Size(max = 500) String reason) {}
