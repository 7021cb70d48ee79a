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
import org.jspecify.annotations.Nullable;

/** What the journal says of keepers, by id alone. */
@ApplicationScoped
class KeeperFacts implements FactBook {
    record KeeperJoined(UUID keeperId, Role role) implements Fact {}

    record KeeperLeft(UUID keeperId) implements Fact {}

    record CollectionOpened(UUID collectionId, String label, List<UUID> keeperIds) implements Fact {}

    /** The regions by which the population is counted, all of them. */
    record RegionsFixed(List<String> names, @Nullable Long supersedes) implements Fact {}

    /** @param region null: none is stated any more */
    record RegionStated(UUID collectionId, @Nullable String region) implements Fact {}

    /** Who belongs to a population, or as what, is different once the present transaction is through. */
    record MembershipChanged(UUID populationId) {}

    @Inject
    Event<MembershipChanged> membershipChanged;

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(
                KeeperJoined.class, KeeperLeft.class, CollectionOpened.class, RegionsFixed.class, RegionStated.class);
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
        } else if (fact instanceof RegionsFixed fixed) {
            RegionList.fix(populationId, fixed, entry.seq());
        } else if (fact instanceof RegionStated stated) {
            Collection collection = Collection.findById(new Collection.Key(populationId, stated.collectionId()));
            collection.region = stated.region();
        }
    }
}
