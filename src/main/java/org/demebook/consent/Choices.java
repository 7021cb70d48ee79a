package org.demebook.consent;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Predicate;
import org.demebook.consent.GrantFacts.GrantSuperseded;
import org.demebook.consent.GrantFacts.SharingChosen;
import org.demebook.consent.SharingView.NodeChoice;
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
        var ready = live.stream()
                .filter(row -> row.choice != null && row.recipientNode == null)
                .toList();
        return new SharingView(
                collection,
                sharing == null ? null : ReadyChoice.parse(sharing.choice),
                sharing == null ? null : sharing.chosenAt,
                views.of(by, ready, now),
                nodes(live),
                (int) live.stream().filter(row -> row.choice == null).count());
    }

    private static List<NodeChoice> nodes(List<GrantRow> live) {
        var choices = new TreeMap<String, ReadyChoice>();
        live.stream()
                .filter(row -> row.choice != null && row.recipientNode != null)
                .forEach(row -> choices.put(row.recipientNode, ReadyChoice.parse(row.choice)));
        return choices.entrySet().stream()
                .map(entry -> new NodeChoice(entry.getKey(), entry.getValue()))
                .toList();
    }

    /**
     * Shares by a ready choice, from now on, in place of what the earlier one granted; grants written by hand stay. Private ends what
     * was chosen for other nodes too.
     */
    @Transactional
    public SharingView choose(Standing by, UUID collectionId, ReadyChoice choice) {
        journal.open(by.populationId());
        var collection = keepers.collection(by, collectionId).id();
        var now = checks.now();
        journal.record(by.populationId(), by.keeperId(), new SharingChosen(collection, choice));
        for (var earlier : standing(by, collection, choice)) {
            journal.record(by.populationId(), by.keeperId(), new GrantSuperseded(earlier.id));
        }
        for (var line : ReadyGrants.of(choice)) {
            journal.record(by.populationId(), by.keeperId(), line.given(collection, choice, now));
        }
        return sharing(by, collection);
    }

    /**
     * The same for the members of one other node, beside what is chosen for everybody.
     *
     * @param node its code
     */
    @Transactional
    public SharingView chooseForNode(Standing by, UUID collectionId, ReadyChoice choice, String node) {
        journal.open(by.populationId());
        var collection = keepers.collection(by, collectionId).id();
        var now = checks.now();
        for (var earlier : live(by, collection, row -> node.equals(row.recipientNode))) {
            journal.record(by.populationId(), by.keeperId(), new GrantSuperseded(earlier.id));
        }
        for (var line : ReadyGrants.ofNode(choice, node)) {
            journal.record(by.populationId(), by.keeperId(), line.given(collection, choice, now));
        }
        return sharing(by, collection);
    }

    /** What an earlier choice granted and still grants, in whose place another one would stand. */
    List<GrantRow> standing(Standing by, UUID collectionId, ReadyChoice choice) {
        return live(by, collectionId, row -> row.recipientNode == null || choice == ReadyChoice.PRIVATE);
    }

    private List<GrantRow> live(Standing by, UUID collectionId, Predicate<GrantRow> which) {
        var now = checks.now();
        return GrantRow.ofCollections(by.populationId(), Set.of(collectionId)).stream()
                .filter(row -> row.choice != null && which.test(row))
                .filter(row -> row.grant().state(now) == GrantState.LIVE)
                .toList();
    }
}
