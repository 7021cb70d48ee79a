package org.demebook.handover;

import org.demebook.transfer.Kind;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * @param kind how the animal changes hands; nothing where it is in a transfer, which says so
 * @param showName true: the sheet names you, in full, to whoever reads it; false, the usual: "a keeper of this register"
 */
public record NewHandoverSheet(
        @Schema(implementation = String.class) @Nullable Kind kind,
        @Nullable Boolean showName) {}
