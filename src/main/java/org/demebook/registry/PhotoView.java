package org.demebook.registry;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A photograph; position, camera data and every other hidden text were taken out before it was stored. */
public record PhotoView(
        UUID id, @Nullable String label, @Nullable LocalDate takenOn, int widthPixels, int heightPixels) {}
