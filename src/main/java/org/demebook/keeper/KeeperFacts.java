package org.demebook.keeper;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.journal.Words;

/** What the journal says of keepers, by id alone. */
@ApplicationScoped
class KeeperFacts implements FactBook {
    record KeeperJoined(UUID keeperId, Role role) implements Fact {}

    record KeeperLeft(UUID keeperId) implements Fact {}

    record CollectionOpened(
            UUID collectionId, @Words(required = true) String label, List<UUID> keeperIds) implements Fact {}

    /** Who belongs to a population, or as what, is different once the present transaction is through. */
    record MembershipChanged(UUID populationId) {}

    @Inject
    Event<MembershipChanged> membershipChanged;

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(KeeperJoined.class, KeeperLeft.class, CollectionOpened.class);
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        var populationId = entry.populationId();
        if (fact instanceof KeeperJoined joined) {
            var present = Membership.of(populationId, joined.keeperId());
            if (present == null) {
                new Membership(populationId, joined.keeperId(), joined.role(), entry.seq()).persist();
            } else {
                present.role = joined.role().word();
            }
            membershipChanged.fire(new MembershipChanged(populationId));
        } else if (fact instanceof KeeperLeft left) {
            Membership.deleteById(new Membership.Key(populationId, left.keeperId()));
            membershipChanged.fire(new MembershipChanged(populationId));
        } else if (fact instanceof CollectionOpened opened) {
            new Collection(populationId, opened.collectionId(), opened.label(), Set.copyOf(opened.keeperIds()))
                    .persist();
        }
    }
}
