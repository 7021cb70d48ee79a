package org.demebook.planning;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/**
 * What is said of a hold.
 *
 * @param reason for its holder and for coordinators
 */
public record HoldWord(@NotBlank @Size(max = 500) String reason) {}
