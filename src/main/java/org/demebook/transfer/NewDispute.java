package org.demebook.transfer;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A report that an animal is in a collection of yours although the register has it elsewhere.
 *
 * @param seenOn the last day on which you saw it there
 * @param collection id of the collection of yours that it is in; nothing when you act for one alone
 * @param note what speaks for it: its transponder read, a mark, how it came there; all sides see it
 */
public record NewDispute(
        @NotNull LocalDate seenOn,
        @Nullable UUID collection,
        @Nullable @Size(max = 500) String note) {}
