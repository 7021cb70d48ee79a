package org.demebook.web.crossing;

import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import jakarta.inject.Named;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.demebook.crossing.AdoptedAnimals;
import org.demebook.crossing.CrossingState;
import org.demebook.crossing.Crossings;
import org.demebook.rest.Page;
import org.demebook.web.Visit;
import org.jspecify.annotations.Nullable;

/**
 * What is offered from other nodes to the one who looks, for any page that shows it: {@code inject:waitingCrossings}. Read at the first
 * question of a request.
 */
@Named("waitingCrossings")
@RequestScoped
public class WaitingCrossings {
    @Inject
    Visit visit;

    @Inject
    Crossings crossings;

    @Inject
    AdoptedAnimals adoptedAnimals;

    @Inject
    CrossingWords told;

    private @Nullable List<CrossingRow> offers;
    private @Nullable Integer adopted;
    private @Nullable Boolean shared;

    public List<CrossingRow> getOffers() {
        if (offers == null) {
            var by = visit.in(Objects.requireNonNull(visit.getPopulation(), "a page of a population"));
            offers = told
                    .rows(crossings
                            .page(by, CrossingState.OFFERED, null, Page.MOST)
                            .items())
                    .stream()
                    .filter(CrossingRow::isWaiting)
                    .toList();
        }
        return offers;
    }

    /** How many animals of a node that is gone wait for a keeper here; 0 for who has no say in it. */
    public int getAdopted() {
        if (adopted == null) {
            var by = visit.in(Objects.requireNonNull(visit.getPopulation(), "a page of a population"));
            adopted = by.isCoordinator() ? adoptedAnimals.waiting(by).size() : 0;
        }
        return adopted;
    }

    /** The crossing by which the one who looks is giving an animal; null when there is none under way. */
    public @Nullable CrossingRow given(UUID animalId) {
        var by = visit.in(Objects.requireNonNull(visit.getPopulation(), "a page of a population"));
        return crossings
                .lastGiven(by, animalId)
                .map(told::row)
                .filter(CrossingRow::isOpen)
                .orElse(null);
    }

    /** Whether there is another node to give to. */
    public boolean isPossible() {
        if (shared == null) {
            var by = visit.in(Objects.requireNonNull(visit.getPopulation(), "a page of a population"));
            shared = !crossings.nodes(by).isEmpty();
        }
        return shared;
    }
}
