package org.demebook.keeper;

import static org.demebook.problem.ProblemType.ALREADY_MEMBER;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_COLLECTION;
import static org.demebook.problem.ProblemType.NO_SUCH_COLLECTION;
import static org.demebook.problem.ProblemType.NO_SUCH_KEEPER;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.demebook.journal.Journal;
import org.demebook.keeper.KeeperFacts.CollectionOpened;
import org.demebook.keeper.KeeperFacts.KeeperJoined;
import org.demebook.keeper.KeeperFacts.KeeperLeft;
import org.demebook.problem.Refusal;
import org.demebook.wall.Wall;
import org.jspecify.annotations.Nullable;

/** What keepers are in a population, and for which collections they act. */
@ApplicationScoped
public class Keepers {
    private static final String STANDING = """
        select h.population_id, m.role, h.seq
        from demebook.journal_head h
        join demebook.membership m on m.population_id = h.population_id and m.keeper_id = ?
        where h.code = ?
        """;

    private static final String KEEPERS_OF_COLLECTIONS = """
        select collection_id, keeper_id
        from demebook.collection_keeper
        where population_id = ?
        order by keeper_id, collection_id
        """;

    @Inject
    Journal journal;

    @Inject
    DataSource database;

    @Inject
    Wall wall;

    /**
     * What the asker is in a population. Refuses with NO_SUCH_POPULATION alike when there is none and when they do not
     * belong to it. One query without a transaction: every request begins with it.
     */
    public Standing standing(Asker asker, String populationCode) {
        wall.asks(asker.keeperId());
        try (var connection = database.getConnection();
                var query = connection.prepareStatement(STANDING)) {
            query.setObject(1, asker.keeperId());
            query.setString(2, populationCode);
            try (var row = query.executeQuery()) {
                if (!row.next()) {
                    throw new Refusal(
                            NO_SUCH_POPULATION,
                            "You belong to no population with the code %s.".formatted(populationCode));
                }
                return new Standing(
                        row.getObject(1, UUID.class),
                        populationCode,
                        asker.keeperId(),
                        Role.of(row.getString(2)),
                        row.getLong(3));
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The collections that the asker acts for. */
    @Transactional
    public List<CollectionView> collections(Standing by) {
        return Collection.of(by.populationId(), by.keeperId()).stream()
                .map(Collection::view)
                .toList();
    }

    /** The ids of the collections that the asker acts for. */
    @Transactional
    public Set<UUID> collectionIds(Standing by) {
        return Collection.of(by.populationId(), by.keeperId()).stream()
                .map(collection -> collection.id)
                .collect(Collectors.toSet());
    }

    /** The one that is meant: the named one of the asker's own, or their only one. */
    @Transactional
    public CollectionView collection(Standing by, @Nullable UUID collectionId) {
        var own = collections(by);
        if (collectionId != null) {
            return own.stream()
                    .filter(collection -> collection.id().equals(collectionId))
                    .findFirst()
                    .orElseThrow(() -> new Refusal(
                            NO_SUCH_COLLECTION, "You act for no collection with the id %s.".formatted(collectionId)));
        }
        if (own.isEmpty()) {
            throw new Refusal(
                    NO_COLLECTION,
                    "Open a collection first (POST /api/v1/populations/%s/collections)."
                            .formatted(by.populationCode()));
        }
        if (own.size() > 1) {
            throw new Refusal(
                    NO_SUCH_COLLECTION,
                    "You act for %d collections; say which one (collection).".formatted(own.size()));
        }
        return own.get(0);
    }

    /** Whether a keeper acts for a collection. */
    @Transactional
    public boolean actsFor(UUID populationId, UUID keeperId, UUID collectionId) {
        return Collection.of(populationId, keeperId).stream()
                .anyMatch(collection -> collection.id.equals(collectionId));
    }

    /**
     * Which collections belong to one household: those that share a keeper, directly or through others.
     *
     * @return by collection id, an id that all collections of the household have in common
     */
    public Map<UUID, UUID> households(UUID populationId) {
        var households = new Households();
        eachKeeperOfACollection(populationId, households::add);
        return households.byCollection();
    }

    /** The collections that each keeper acts for, by keeper; who acts for none is not there. */
    public Map<UUID, Set<UUID>> collectionsByKeeper(UUID populationId) {
        var collections = new HashMap<UUID, Set<UUID>>();
        eachKeeperOfACollection(populationId, (collectionId, keeperId) -> collections
                .computeIfAbsent(keeperId, id -> new HashSet<>())
                .add(collectionId));
        return collections;
    }

    /** The keepers of each collection of a population. */
    public Map<UUID, Set<UUID>> keepersOfCollections(UUID populationId) {
        var keepers = new LinkedHashMap<UUID, Set<UUID>>();
        eachKeeperOfACollection(populationId, (collectionId, keeperId) -> keepers.computeIfAbsent(
                        collectionId, id -> new LinkedHashSet<>())
                .add(keeperId));
        return keepers;
    }

    private void eachKeeperOfACollection(UUID populationId, BiConsumer<UUID, UUID> collectionAndKeeper) {
        try (var connection = database.getConnection();
                var query = connection.prepareStatement(KEEPERS_OF_COLLECTIONS)) {
            query.setObject(1, populationId);
            try (var row = query.executeQuery()) {
                while (row.next()) {
                    collectionAndKeeper.accept(row.getObject(1, UUID.class), row.getObject(2, UUID.class));
                }
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Opens a collection of the asker's, shared with further members of the same household where they are named. */
    @Transactional
    public CollectionView open(Standing by, NewCollection collection) {
        journal.open(by.populationId());
        var keeperIds = new ArrayList<>(List.of(by.keeperId()));
        for (var name : collection.sharedWith()) {
            var other = member(by, name).keeperId();
            if (!keeperIds.contains(other)) {
                keeperIds.add(other);
            }
        }
        return open(by.populationId(), by.keeperId(), collection.label(), keeperIds);
    }

    /** Opens a collection for a keeper who joins with an animal. */
    @Transactional(TxType.MANDATORY)
    public CollectionView open(UUID populationId, UUID keeperId, String label, List<UUID> keeperIds) {
        var id = Journal.newId();
        journal.record(populationId, keeperId, new CollectionOpened(id, label, keeperIds));
        return new CollectionView(id, label, null);
    }

    /** A fellow member by sign-in name. */
    @Transactional
    public Asker member(Standing by, String name) {
        return Keeper.named(name)
                .filter(keeper -> Membership.of(by.populationId(), keeper.id) != null)
                .map(Keeper::asker)
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_KEEPER,
                        "Nobody called \"%s\" belongs to %s; ask them for their sign-in name."
                                .formatted(name, by.populationCode())));
    }

    /** The member of a population with that sign-in name; for rooms that let nobody know whether there is one. */
    @Transactional
    public Optional<UUID> memberNamed(UUID populationId, String name) {
        return Keeper.named(name)
                .filter(keeper -> Membership.of(populationId, keeper.id) != null)
                .map(keeper -> keeper.id);
    }

    /** The collections that a keeper acts for, the oldest first. */
    @Transactional
    public List<UUID> collectionIdsOf(UUID populationId, UUID keeperId) {
        return Collection.of(populationId, keeperId).stream()
                .map(collection -> collection.id)
                .toList();
    }

    /** Who acts for a collection. */
    @Transactional
    public Set<UUID> keepersOf(UUID populationId, UUID collectionId) {
        return Collection.keepersOf(populationId, collectionId);
    }

    /** Sign-in names by id; an id whose keeper is gone from this node has none. */
    @Transactional
    public Map<UUID, String> names(Set<UUID> keeperIds) {
        return Keeper.withIds(keeperIds).stream().collect(Collectors.toMap(keeper -> keeper.id, keeper -> keeper.name));
    }

    /** Sign-in names of those who act for a collection, in order; who is gone from this node has none. */
    @Transactional
    public List<String> namesOf(UUID populationId, UUID collectionId) {
        return names(Collection.keepersOf(populationId, collectionId)).values().stream()
                .sorted()
                .toList();
    }

    /** The name of a keeper of this node in full, to be shown where they ask for it. */
    @Transactional
    public Optional<String> fullName(UUID keeperId) {
        return Keeper.withIds(Set.of(keeperId)).stream()
                .map(keeper -> keeper.fullName)
                .findFirst();
    }

    /** Whether the keeper belongs to the population. */
    @Transactional
    public boolean belongs(UUID populationId, UUID keeperId) {
        return Membership.of(populationId, keeperId) != null;
    }

    /** What another keeper is in the asker's population, as the asker's standing has it; empty when they do not belong to it. */
    @Transactional
    public Optional<Standing> fellow(Standing by, UUID keeperId) {
        return Optional.ofNullable(Membership.of(by.populationId(), keeperId))
                .map(membership -> new Standing(
                        by.populationId(), by.populationCode(), keeperId, Role.of(membership.role), by.head()));
    }

    /** What a collection is called; for who may know whose it is. */
    @Transactional
    public String label(UUID populationId, UUID collectionId) {
        return Collection.<Collection>findById(new Collection.Key(populationId, collectionId)).label;
    }

    /** The members and their roles; for coordinators. */
    @Transactional
    public List<MemberView> members(Standing by) {
        requireCoordinator(by);
        return Membership.in(by.populationId()).stream()
                .map(membership ->
                        new MemberView(Keeper.<Keeper>findById(membership.keeperId).name, Role.of(membership.role)))
                .toList();
    }

    /** Takes a keeper of this node into the population, or changes their role; by a coordinator. */
    @Transactional
    public MemberView admit(Standing by, MemberView member) {
        requireCoordinator(by);
        journal.open(by.populationId());
        var keeper = Keeper.named(member.name())
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_KEEPER, "Nobody on this node is called \"%s\"; invite them.".formatted(member.name())));
        var present = Membership.of(by.populationId(), keeper.id);
        if (present != null && present.role.equals(member.role().word())) {
            throw new Refusal(
                    ALREADY_MEMBER,
                    "%s is %s already.".formatted(keeper.name, member.role().word()));
        }
        requireAnotherCoordinator(by, keeper.id, member.role());
        journal.record(by.populationId(), by.keeperId(), new KeeperJoined(keeper.id, member.role()));
        return new MemberView(keeper.name, member.role());
    }

    /** Ends a membership: one's own, or anybody's by a coordinator. Their animals stay in the register. */
    @Transactional
    public void dismiss(Standing by, String name) {
        journal.open(by.populationId());
        // who belongs to it is for coordinators to list: to others each name but their own is alike
        var named = Keeper.named(name);
        if (named.isEmpty() || !named.get().id.equals(by.keeperId())) {
            requireCoordinator(by);
        }
        var leaving = member(by, name).keeperId();
        requireAnotherCoordinator(by, leaving, Role.MEMBER);
        journal.record(by.populationId(), by.keeperId(), new KeeperLeft(leaving));
    }

    /** Records a membership; the caller has made sure that it is due. */
    @Transactional(TxType.MANDATORY)
    public void join(UUID populationId, UUID actorId, UUID keeperId, Role role) {
        journal.record(populationId, actorId, new KeeperJoined(keeperId, role));
    }

    public static void requireCoordinator(Standing by) {
        if (!by.isCoordinator()) {
            throw new Refusal(
                    NOT_ALLOWED,
                    "Only a coordinator of %s may do this; ask one of them.".formatted(by.populationCode()));
        }
    }

    /** Whether nobody but the asker coordinates the population. */
    boolean isLastCoordinator(Standing by) {
        return by.isCoordinator() && otherCoordinators(by, by.keeperId()) == 0;
    }

    private static long otherCoordinators(Standing by, UUID keeperId) {
        return Membership.in(by.populationId()).stream()
                .filter(other -> Role.of(other.role) == Role.COORDINATOR && !other.keeperId.equals(keeperId))
                .count();
    }

    private static void requireAnotherCoordinator(Standing by, UUID keeperId, Role role) {
        if (role != Role.COORDINATOR && otherCoordinators(by, keeperId) == 0) {
            throw new Refusal(
                    NOT_ALLOWED,
                    "%s would be left without a coordinator; name another one first.".formatted(by.populationCode()));
        }
    }
}
