package org.demebook.registry;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import org.demebook.taxon.BirthMode;
import org.demebook.taxon.TaxonProfile;
import org.jspecify.annotations.Nullable;

/**
 * A population to be founded; who founds it coordinates it.
 *
 * @param code begins every studbook number and never changes
 * @param profile nothing for the usual figures of boas
 */
public record NewPopulation(
        @NotNull
        @Pattern(regexp = "[A-Z][A-Z0-9]{1,5}", message = "takes 2 to 6 capital letters and digits, a letter first")
        String code,

        @NotBlank @Size(max = 100) String name,
        @NotBlank @Size(max = 200) String taxon,
        @NotBlank @Size(max = 200) String locality,
        @NotNull BirthMode birthMode,
        @Nullable @Valid TaxonProfile profile) {}
