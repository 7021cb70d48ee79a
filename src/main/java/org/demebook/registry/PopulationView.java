package org.demebook.registry;

import org.demebook.taxon.BirthMode;
import org.demebook.taxon.TaxonProfile;

/** A population as its members see it. */
public record PopulationView(
        String code,
        String name,
        String taxon,
        String locality,
        BirthMode birthMode,
        TaxonProfile profile,
        long revision) {}
