package org.demebook.registry;

import org.demebook.rest.ShownTo;
import org.demebook.taxon.BirthMode;
import org.demebook.taxon.TaxonProfile;

/** A population as its members see it. */
@ShownTo(ShownTo.Whom.MEMBERS)
public record PopulationView(
        String code,
        String name,
        String taxon,
        String locality,
        BirthMode birthMode,
        TaxonProfile profile,
        long revision) {}
