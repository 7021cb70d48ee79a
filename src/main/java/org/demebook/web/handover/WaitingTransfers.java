package org.demebook.web.handover;

import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import jakarta.inject.Named;
import java.util.List;
import java.util.Objects;
import org.demebook.keeper.CollectionView;
import org.demebook.keeper.Keepers;
import org.demebook.rest.Page;
import org.demebook.transfer.State;
import org.demebook.transfer.Transfers;
import org.demebook.web.Visit;
import org.jspecify.annotations.Nullable;

/**
 * What is offered to the one who looks, for any page that shows it: {@code inject:waitingTransfers}. Read at the first question
 * of a request.
 */
@Named("waitingTransfers")
@RequestScoped
public class WaitingTransfers {
    @Inject
    Visit visit;

    @Inject
    Transfers transfers;

    @Inject
    Keepers keepers;

    @Inject
    Told told;

    private @Nullable List<TransferRow> offers;
    private @Nullable List<CollectionView> collections;

    public List<TransferRow> getOffers() {
        if (offers == null) {
            var by = visit.in(population());
            offers = told
                    .rows(transfers.page(by, State.OFFERED, null, Page.MOST).items())
                    .stream()
                    .filter(TransferRow::isWaiting)
                    .toList();
        }
        return offers;
    }

    /** Where an animal may go; one that is offered to somebody with several goes where they say. */
    public List<CollectionView> getCollections() {
        if (collections == null) {
            collections = keepers.collections(visit.in(population()));
        }
        return collections;
    }

    private String population() {
        return Objects.requireNonNull(visit.getPopulation(), "a page of a population");
    }
}
