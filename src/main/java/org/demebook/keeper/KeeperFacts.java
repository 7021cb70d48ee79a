package org.demebook.keeper;

import io.quarkus.arc.All;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.journal.Forgotten;
import org.demebook.journal.Words;
import org.jspecify.annotations.Nullable;

/** What the journal says of keepers, by id alone. */
@ApplicationScoped
class KeeperFacts implements FactBook {
    record KeeperJoined(UUID keeperId, Role role) implements Fact {}

    record KeeperLeft(UUID keeperId) implements Fact {}

    record CollectionOpened(
            UUID collectionId, @Words(required = true) String label, List<UUID> keeperIds) implements Fact {}

    /**
     * A keeper left and took their own out: what they wrote is read from no entry any more.
     *
     * @param sharedCollectionIds collections of theirs that others act for too, with which they stay
     */
    record KeeperErased(UUID keeperId, List<UUID> sharedCollectionIds) implements Fact {
        KeeperErased {
            sharedCollectionIds = sharedCollectionIds == null ? List.of() : List.copyOf(sharedCollectionIds);
        }
    }

    /** A collection that nobody acts for, for one animal of a keeper who left. */
    record UnnamedHolderOpened(UUID collectionId) implements Fact {}

    private static final String UNNAMED = "unnamed holder";

    /** The regions by which the population is counted, all of them. */
    record RegionsFixed(List<String> names, @Nullable Long supersedes) implements Fact {}

    /** How far apart regions are, all that is known of it. */
    record RegionDistancesStated(
            List<RegionDistances.RegionPair> pairs,
            @Nullable Long supersedes) implements Fact {
        RegionDistancesStated {
            pairs = pairs == null ? List.of() : List.copyOf(pairs);
        }
    }

    /** @param region null: none is stated any more */
    record RegionStated(UUID collectionId, @Nullable String region) implements Fact {}

    /** Who belongs to a population, or as what, is different once the present transaction is through. */
    record MembershipChanged(UUID populationId) {}

    @Inject
    Event<MembershipChanged> membershipChanged;

    @Inject
    @All
    List<Leaving> rooms;

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(
                KeeperJoined.class,
                KeeperLeft.class,
                KeeperErased.class,
                CollectionOpened.class,
                UnnamedHolderOpened.class,
                RegionsFixed.class,
                RegionDistancesStated.class,
                RegionStated.class);
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
        } else if (fact instanceof RegionDistancesStated stated) {
            RegionDistance.state(populationId, stated, entry.seq());
        } else if (fact instanceof RegionStated stated) {
            Collection collection = Collection.findById(new Collection.Key(populationId, stated.collectionId()));
            collection.region = stated.region();
        } else if (fact instanceof UnnamedHolderOpened opened) {
            new Collection(populationId, opened.collectionId(), UNNAMED, Set.of())
                    .persistAndFlush(); // an animal comes to it
        } else if (fact instanceof KeeperErased erased) {
            erase(entry, erased.keeperId(), Set.copyOf(erased.sharedCollectionIds()));
            membershipChanged.fire(new MembershipChanged(populationId));
        }
    }

    private void erase(Entry entry, UUID keeperId, Set<UUID> shared) {
        Membership.deleteById(new Membership.Key(entry.populationId(), keeperId));
        Collection.flush();
        var collectionIds = Collection.of(entry.populationId(), keeperId).stream()
                .map(collection -> collection.id)
                .toList();
        Collection.leave(entry.populationId(), keeperId);
        for (var collectionId : collectionIds) {
            if (!shared.contains(collectionId)) {
                Collection.close(entry.populationId(), collectionId, Words.ERASED);
            }
        }
        rooms.forEach(room -> room.left(entry, keeperId, shared));
    }

    @Override
    public boolean forget(Forgotten forgotten) {
        if (forgotten.left() instanceof CollectionOpened opened) {
            if (forgotten.sharedCollections().contains(opened.collectionId())) {
                return false;
            }
            Collection.rename(forgotten.entry().populationId(), opened.collectionId(), opened.label());
        }
        return true;
    }
}
