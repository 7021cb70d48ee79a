package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.keeper.Asker;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Role;
import org.demebook.keeper.Standing;
import org.demebook.registry.PopulationFacts.PopulationDescribed;
import org.demebook.registry.PopulationFacts.PopulationFounded;
import org.demebook.rest.Revision;
import org.demebook.taxon.TaxonProfile;
import org.jspecify.annotations.Nullable;

/** The populations on this node. */
@ApplicationScoped
public class Populations {
    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    EntityManager entities;

    /** Founds a population; the founder coordinates it. Refuses with CODE_TAKEN. */
    @Transactional
    public PopulationView found(Asker by, NewPopulation population) {
        return found(by, Journal.newId(), population);
    }

    /**
     * The same with the id that it has on the node where it was founded first. Refuses with CODE_TAKEN.
     *
     * @param by who coordinates it here
     */
    @Transactional
    public PopulationView found(Asker by, UUID id, NewPopulation population) {
        journal.begin(id, population.code());
        journal.record(
                id,
                by.keeperId(),
                new PopulationFounded(
                        population.code(),
                        population.name().strip(),
                        population.taxon().strip(),
                        population.locality().strip(),
                        population.birthMode(),
                        Objects.requireNonNullElse(population.profile(), TaxonProfile.BOAS)));
        keepers.join(id, by.keeperId(), by.keeperId(), Role.COORDINATOR);
        return Population.<Population>findById(id).view();
    }

    @Transactional
    public PopulationView get(Standing by) {
        return Population.<Population>findById(by.populationId()).view();
    }

    /** The same by id; for rooms that hold one. */
    @Transactional
    public PopulationView get(UUID populationId) {
        return Population.<Population>findById(populationId).view();
    }

    /** The population with that code, whoever belongs to it; for those who run the node. */
    @Transactional
    public Optional<UUID> withCode(String code) {
        return Population.<Population>find("code", code).firstResultOptional().map(population -> population
                .populationId);
    }

    /** The code of a population, for a keeper who does not belong to it yet. */
    @Transactional
    public String codeOf(UUID populationId) {
        return Population.<Population>findById(populationId).code;
    }

    /** The populations that a keeper belongs to. */
    @Transactional
    public List<PopulationView> of(Asker by) {
        return entities.createQuery(
                        "select p from Population p where p.populationId in"
                                + " (select m.populationId from Membership m where m.keeperId = :keeper) order by p.code",
                        Population.class)
                .setParameter("keeper", by.keeperId())
                .getResultStream()
                .map(Population::view)
                .toList();
    }

    /** Describes the population anew, its figures included; by a coordinator, on the revision that they read. */
    @Transactional
    public PopulationView describe(Standing by, @Nullable String ifMatch, NewPopulation description) {
        Keepers.requireCoordinator(by);
        journal.open(by.populationId());
        Population present = Population.findById(by.populationId());
        Revision.require(ifMatch, present.revision);
        journal.record(
                by.populationId(),
                by.keeperId(),
                new PopulationDescribed(
                        description.name().strip(),
                        description.taxon().strip(),
                        description.locality().strip(),
                        description.birthMode(),
                        Objects.requireNonNullElse(description.profile(), present.profile),
                        present.revision));
        return present.view();
    }
}
