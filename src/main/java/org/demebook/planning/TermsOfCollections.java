package org.demebook.planning;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.journal.Entry;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Leaving;
import org.demebook.keeper.Regions;
import org.demebook.keeper.Standing;
import org.demebook.notation.Words;
import org.demebook.planning.PlanningFacts.PairingTermsStated;
import org.demebook.planning.PlanningFacts.PairingTermsWithdrawn;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/** What collections can bear in the coming season, as their keepers state it. */
@ApplicationScoped
public class TermsOfCollections implements Leaving {
    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    Regions regions;

    /** Refuses with NO_SUCH_COLLECTION. */
    @Transactional
    public PairingTermsView get(Standing by, UUID collectionId) {
        var id = keepers.collection(by, collectionId).id();
        return view(id, StatedTerms.of(by.populationId(), id));
    }

    /**
     * States them, all of them, in place of earlier ones; the same again changes nothing. Refuses with NO_SUCH_COLLECTION and
     * NO_SUCH_REGION.
     */
    @Transactional
    public PairingTermsView state(Standing by, UUID collectionId, PairingTerms stated) {
        journal.open(by.populationId());
        var id = keepers.collection(by, collectionId).id();
        var terms = new PairingTerms(
                stated.littersAtMost(),
                stated.malesAwayAtMost(),
                stated.farthestKilometres(),
                stated.mayCrossBorders(),
                stated.exchangeWith() == null
                        ? null
                        : stated.exchangeWith().stream()
                                .map(region -> regions.require(by, region))
                                .distinct()
                                .toList(),
                Words.orNull(stated.notes()));
        var present = StatedTerms.of(by.populationId(), id);
        if (present == null || !present.terms().equals(terms)) {
            journal.record(
                    by.populationId(),
                    by.keeperId(),
                    PairingTermsStated.of(id, terms, present == null ? null : present.revision));
        }
        return get(by, id);
    }

    /** States none any more; a second time changes nothing. Refuses with NO_SUCH_COLLECTION. */
    @Transactional
    public PairingTermsView withdraw(Standing by, UUID collectionId) {
        journal.open(by.populationId());
        var id = keepers.collection(by, collectionId).id();
        var present = StatedTerms.of(by.populationId(), id);
        if (present != null) {
            journal.record(by.populationId(), by.keeperId(), new PairingTermsWithdrawn(id, present.revision));
        }
        return get(by, id);
    }

    /** Of all collections that state some, without their notes. Never to be shown. One query. */
    @WholeRegister
    @Transactional
    Map<UUID, PairingTerms> of(UUID populationId) {
        return StatedTerms.of(populationId).stream()
                .collect(Collectors.toMap(
                        stated -> stated.collectionId, stated -> stated.terms().withoutNotes()));
    }

    @Override
    public void left(Entry entry, UUID keeperId, Set<UUID> shared) {
        StatedTerms.withdrawOfNobody(entry.populationId());
    }

    private static PairingTermsView view(UUID collectionId, @Nullable StatedTerms stated) {
        var terms = stated == null ? PairingTerms.NONE : stated.terms();
        return new PairingTermsView(
                collectionId,
                stated != null,
                terms.littersAtMost(),
                terms.malesAwayAtMost(),
                terms.farthestKilometres(),
                terms.mayCrossBorders(),
                terms.exchangeWith(),
                terms.notes(),
                stated == null ? null : stated.statedAt);
    }
}
