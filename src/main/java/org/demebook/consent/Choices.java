package org.demebook.consent;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.demebook.consent.GrantFacts.GrantSuperseded;
import org.demebook.consent.GrantFacts.SharingChosen;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;

/** The ready choices: what most keepers want to share, in one word. */
@ApplicationScoped
public class Choices {
    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    GrantChecks checks;

    @Inject
    GrantViews views;

    @Transactional
    public SharingView sharing(Standing by, UUID collectionId) {
        var collection = keepers.collection(by, collectionId).id();
        var sharing = Sharing.of(by.populationId(), collection);
        var now = checks.now();
        var live = GrantRow.ofCollections(by.populationId(), Set.of(collection)).stream()
                .filter(row -> row.grant().state(now) == GrantState.LIVE)
                .toList();
        var ready = live.stream().filter(row -> row.choice != null).toList();
        return new SharingView(
                collection,
                sharing == null ? null : ReadyChoice.parse(sharing.choice),
                sharing == null ? null : sharing.chosenAt,
                views.of(by, ready, now),
                live.size() - ready.size());
    }

    /** Shares by a ready choice, from now on, in place of what the earlier one granted; grants written by hand stay. */
    @Transactional
    public SharingView choose(Standing by, UUID collectionId, ReadyChoice choice) {
        journal.open(by.populationId());
        var collection = keepers.collection(by, collectionId).id();
        var now = checks.now();
        journal.record(by.populationId(), by.keeperId(), new SharingChosen(collection, choice));
        for (var earlier : standing(by, collection)) {
            journal.record(by.populationId(), by.keeperId(), new GrantSuperseded(earlier.id));
        }
        for (var line : ReadyGrants.of(choice)) {
            journal.record(by.populationId(), by.keeperId(), line.given(collection, choice, now));
        }
        return sharing(by, collection);
    }

    /** What an earlier choice granted and still grants. */
    List<GrantRow> standing(Standing by, UUID collectionId) {
        var now = checks.now();
        return GrantRow.ofCollections(by.populationId(), Set.of(collectionId)).stream()
                .filter(row -> row.choice != null)
                .filter(row -> row.grant().state(now) == GrantState.LIVE)
                .toList();
    }
}
