package org.demebook.keeper;

import io.quarkus.arc.All;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.journal.Journal;
import org.demebook.keeper.KeeperFacts.KeeperErased;
import org.demebook.keeper.KeeperFacts.UnnamedHolderOpened;

/** Keepers who leave a population for good: what they act for, what keeps them from leaving, and that they left. */
@ApplicationScoped
public class Leavers {
    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    @All
    List<Leaving> rooms;

    /** The asker's collections that another member acts for too: they stay with these. */
    @Transactional
    public Set<UUID> shared(Standing by) {
        var members = Membership.in(by.populationId()).stream()
                .map(membership -> membership.keeperId)
                .collect(Collectors.toSet());
        members.remove(by.keeperId());
        return keepers.collectionIds(by).stream()
                .filter(id ->
                        Collection.keepersOf(by.populationId(), id).stream().anyMatch(members::contains))
                .collect(Collectors.toSet());
    }

    /** The asker's other collections. */
    @Transactional
    public Set<UUID> alone(Standing by) {
        var alone = new HashSet<>(keepers.collectionIds(by));
        alone.removeAll(shared(by));
        return alone;
    }

    /** What has to come to its end first, in sentences that say what to do; empty when nothing has. */
    @Transactional
    public List<String> inTheWay(Standing by) {
        var inTheWay = new ArrayList<String>();
        if (keepers.isLastCoordinator(by)) {
            inTheWay.add("You are the last coordinator of %s: make another member coordinator first (POST …/members)."
                    .formatted(by.populationCode()));
        }
        var alone = alone(by);
        rooms.forEach(room -> inTheWay.addAll(room.inTheWay(by, alone)));
        return inTheWay;
    }

    /** Whether their account on this node goes as well: they belong to no other population, and do not administer the node. */
    @Transactional
    public boolean accountGoes(Standing by) {
        return Membership.count("keeperId = ?1 and populationId <> ?2", by.keeperId(), by.populationId()) == 0
                && Keeper.count("id = ?1 and administrator", by.keeperId()) == 0;
    }

    /** Everybody who belongs to the population. */
    @Transactional
    public Set<UUID> members(UUID populationId) {
        return Membership.in(populationId).stream()
                .map(membership -> membership.keeperId)
                .collect(Collectors.toSet());
    }

    /** Records that they left and took their own out. The caller has made sure that nothing is in the way. */
    @Transactional(TxType.MANDATORY)
    public void leave(Standing by, Set<UUID> shared) {
        journal.record(
                by.populationId(),
                by.keeperId(),
                new KeeperErased(by.keeperId(), shared.stream().sorted().toList()));
    }

    /** Opens a collection that nobody acts for: it holds one animal of somebody who left. */
    @Transactional(TxType.MANDATORY)
    public void openUnnamed(Standing by, UUID collectionId) {
        journal.record(by.populationId(), by.keeperId(), new UnnamedHolderOpened(collectionId));
    }

    /** The same, for an animal that another node holds now. */
    @Transactional(TxType.MANDATORY)
    public void openUnnamed(UUID populationId, UUID actorId, UUID collectionId) {
        journal.record(populationId, actorId, new UnnamedHolderOpened(collectionId));
    }

    /** Takes out what is in no journal, and the account where it goes too. */
    @Transactional(TxType.MANDATORY)
    public void clear(Standing by, Set<UUID> alone, boolean accountGoes) {
        Invitation.delete("invitedBy = ?1 and populationId = ?2 and usedAt is null", by.keeperId(), by.populationId());
        rooms.forEach(room -> room.cleared(by.populationId(), by.keeperId(), alone));
        if (accountGoes) {
            rooms.forEach(room -> room.accountGoes(by.keeperId()));
            Invitation.delete("invitedBy = ?1 and usedAt is null", by.keeperId());
            Account.deleteById(by.keeperId());
            Keeper.deleteById(by.keeperId());
        }
    }
}
