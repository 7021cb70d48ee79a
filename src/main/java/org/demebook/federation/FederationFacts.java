package org.demebook.federation;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;

/** What this node's own journal says of sharing a population. What nodes tell each other stands in the federated journals. */
@ApplicationScoped
class FederationFacts implements FactBook {
    /** @param founder id of the node whose charter holds; this one, or the one that was joined */
    record PopulationShared(String founder) implements Fact {}

    /** @param federatedId as {@link org.demebook.protocol.AnimalId} writes it */
    record AnimalNamedBetweenNodes(UUID animalId, String federatedId) implements Fact {}

    /** That node is neither followed nor waited for. */
    record NodeSetAside(String node) implements Fact {}

    record NodeFollowedAgain(String node) implements Fact {}

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(
                PopulationShared.class, AnimalNamedBetweenNodes.class, NodeSetAside.class, NodeFollowedAgain.class);
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof PopulationShared shared) {
            new FederatedPopulation(entry.populationId(), shared.founder()).persist();
        } else if (fact instanceof AnimalNamedBetweenNodes named) {
            new FederatedAnimal(entry.populationId(), named.animalId(), named.federatedId()).persist();
        } else if (fact instanceof NodeSetAside aside) {
            new AsideNode(entry.populationId(), aside.node()).persist();
        } else if (fact instanceof NodeFollowedAgain again) {
            AsideNode.remove(entry.populationId(), again.node());
        }
    }
}
