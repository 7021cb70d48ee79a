package org.demebook.diary;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;

/** Records of a whole rack. */
public record NewCareRecords(
        @NotNull @Size(min = 1, max = CareRecords.MOST) List<@NotNull @Valid StatedCareRecord> records) {}
