package org.demebook.registry;

/** A population as its members see it. */
public record PopulationView(
        String code,
        String name,
        String taxon,
        String locality,
        BirthMode birthMode,
        TaxonProfile profile,
        long revision) {}
