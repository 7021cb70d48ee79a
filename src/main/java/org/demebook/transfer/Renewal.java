package org.demebook.transfer;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A fresh claim code, in place of the one before.
 *
 * @param expiresOn last day on which it can be used, at most a year ahead; nothing for 180 days
 */
public record Renewal(@Nullable LocalDate expiresOn) {}
