package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.taxon.BirthMode;
import org.demebook.taxon.TaxonProfile;
import org.jspecify.annotations.Nullable;

/** What the journal says of a population itself. */
@ApplicationScoped
class PopulationFacts implements FactBook {
    record PopulationFounded(
            String code, String name, String taxon, String locality, BirthMode birthMode, TaxonProfile profile)
            implements Fact {}

    record PopulationDescribed(
            String name,
            String taxon,
            String locality,
            BirthMode birthMode,
            TaxonProfile profile,
            @Nullable Long supersedes)
            implements Fact {}

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(PopulationFounded.class, PopulationDescribed.class);
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof PopulationFounded founded) {
            var population = new Population(entry.populationId(), founded.code(), entry.actorId());
            describe(
                    population,
                    founded.name(),
                    founded.taxon(),
                    founded.locality(),
                    founded.birthMode(),
                    founded.profile());
            population.revision = entry.seq();
            population.persist();
        } else if (fact instanceof PopulationDescribed described) {
            Population population = Population.findById(entry.populationId());
            describe(
                    population,
                    described.name(),
                    described.taxon(),
                    described.locality(),
                    described.birthMode(),
                    described.profile());
            population.revision = entry.seq();
        }
    }

    private static void describe(
            Population population, String name, String taxon, String locality, BirthMode mode, TaxonProfile profile) {
        population.name = name;
        population.taxon = taxon;
        population.locality = locality;
        population.birthMode = mode;
        population.profile = profile;
    }
}
