package org.demebook.telling;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.consent.Action;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Grant;
import org.demebook.consent.GrantsElsewhere;
import org.demebook.consent.Purpose;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.notation.StudbookNumber;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Charter;
import org.demebook.protocol.Statement.AncestryTold;
import org.demebook.protocol.Statement.HoldingTold;
import org.demebook.protocol.Told;
import org.demebook.registry.Elsewhere;
import org.demebook.registry.Elsewhere.Descent;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sire;

/** What was told, as the register and consent of this node have it. All of it came from others: what cannot be read is passed over. */
final class ToldRows {
    private final Elsewhere elsewhere;
    private final List<Grant> grants;
    private final Map<UUID, AnimalId> names;

    private ToldRows(Elsewhere elsewhere, List<Grant> grants) {
        this.elsewhere = elsewhere;
        this.grants = grants;
        this.names = Map.of();
    }

    static ToldRows nothing(long version) {
        return new ToldRows(new Elsewhere(version, List.of(), Map.of(), Map.of()), List.of());
    }

    /** The row of an animal that has no record here: made of its name and of nothing that others could choose freely. */
    static UUID rowOf(AnimalId id) {
        return UUID.nameUUIDFromBytes(("animal " + id).getBytes(StandardCharsets.UTF_8));
    }

    /**
     * @param me id of this node
     * @param claimedSame what is claimed to be the same, and not agreed
     * @param holders the nodes that hold, or held last, the animals of which it was told
     * @param records of this register by name between nodes
     */
    ToldRows(
            long version,
            String me,
            Told told,
            Map<AnimalId, AnimalId> claimedSame,
            Map<AnimalId, String> holders,
            Map<AnimalId, UUID> records,
            Charter charter) {
        var making = new Making(me, told, holders, records, charter);
        var animals = new TreeSet<AnimalId>(told.ancestry().keySet());
        animals.addAll(told.holdings().keySet());
        told.ancestry().values().forEach(ancestry -> making.parents(ancestry).forEach(animals::add));
        animals.forEach(making::look);
        this.elsewhere = new Elsewhere(version, making.rows, making.arrived, making.possiblySame(claimedSame));
        this.grants = making.grants(version);
        this.names = animals.stream().collect(Collectors.toMap(ToldRows::rowOf, id -> id));
    }

    Elsewhere elsewhere() {
        return elsewhere;
    }

    List<Grant> grants() {
        return grants;
    }

    /** What an animal is called between nodes, by its row; empty for a record of this register. */
    Optional<AnimalId> name(UUID row) {
        return Optional.ofNullable(names.get(row));
    }

    /** What is granted to the same extent by one keeper. */
    private record Extent(UUID keeper, Purpose purpose, Action action, Set<FieldGroup> groups) {}

    private static final class Making {
        private final String me;
        private final Told told;
        private final Map<AnimalId, String> holders;
        private final Map<AnimalId, UUID> records;
        private final Charter charter;
        private final Map<AnimalId, String> numbersAsParents = new HashMap<>();
        private final Map<AnimalId, UUID> standsFor = new HashMap<>();
        private final Set<String> taken = new HashSet<>();
        private final Map<Extent, Set<UUID>> extents = new LinkedHashMap<>();
        final List<PedigreeRow> rows = new ArrayList<>();
        final Map<UUID, Descent> arrived = new HashMap<>();

        Making(String me, Told told, Map<AnimalId, String> holders, Map<AnimalId, UUID> records, Charter charter) {
            this.me = me;
            this.told = told;
            this.holders = holders;
            this.records = records;
            this.charter = charter;
            told.ancestry().values().forEach(ancestry -> new ToldDetail(ancestry).parents(numbersAsParents));
            standFor();
        }

        /** Of animals that are the same a record of this register stands for all, if there is one; else the smallest. */
        private void standFor() {
            var members = new HashMap<AnimalId, Set<AnimalId>>();
            told.sameAs()
                    .forEach((id, smallest) -> members.computeIfAbsent(smallest, any -> new TreeSet<>(Set.of(smallest)))
                            .add(id));
            members.values().forEach(same -> {
                var here = same.stream().filter(records::containsKey).findFirst();
                var first = here.orElseGet(() -> same.iterator().next());
                same.stream()
                        .filter(id -> !id.equals(first) && !records.containsKey(id))
                        .forEach(id -> standsFor.put(id, row(first)));
            });
        }

        /** Of an animal that has a record here, that. */
        private UUID row(AnimalId id) {
            var record = records.get(id);
            return record != null ? record : rowOf(id);
        }

        Set<AnimalId> parents(AncestryTold ancestry) {
            var parents = new TreeSet<AnimalId>();
            ancestry.dam().ifPresent(parents::add);
            ancestry.sires().forEach(share -> parents.add(share.sire()));
            return parents;
        }

        void look(AnimalId id) {
            var ancestry = Optional.ofNullable(told.ancestry().get(id))
                    .filter(any -> !id.node().equals(me));
            var holding = Optional.ofNullable(told.holdings().get(id)).filter(any -> !me.equals(holders.get(id)));
            var detail = ancestry.map(ToldDetail::new);
            var record = records.get(id);
            if (record != null) {
                ancestry.ifPresent(of -> arrived.put(record, descent(of, new ToldDetail(of))));
                if (holding.isPresent() && !holding.get().alive()) {
                    rows.add(diedElsewhere(id, record));
                }
                return;
            }
            if (id.node().equals(me)) {
                return; // its record went, and with it what is told of it
            }
            var granted = detail.map(ToldDetail::granted)
                    .or(() -> holding.map(of -> ToldDetail.granted(of.detail())))
                    .orElse(Granted.NOTHING);
            var keeper = keeper(id, holding);
            rows.add(row(id, ancestry, holding, keeper));
            grant(row(id), keeper, granted);
        }

        private Descent descent(AncestryTold ancestry, ToldDetail detail) {
            var granted = detail.granted();
            return new Descent(
                    ancestry.dam().map(this::row).orElse(null),
                    detail.sire(this::row),
                    ancestry.founder() ? Origin.WILD_CAUGHT : Origin.UNKNOWN,
                    !granted.may(Purpose.PEDIGREE_VIEW, FieldGroup.PARENTAGE, Action.READ));
        }

        private UUID keeper(AnimalId id, Optional<HoldingTold> holding) {
            var words = holding.map(of -> "keeper %s %s".formatted(holders.get(id), of.custodian()))
                    .orElseGet(() -> "nobody " + id);
            return UUID.nameUUIDFromBytes(words.getBytes(StandardCharsets.UTF_8));
        }

        private PedigreeRow row(
                AnimalId id, Optional<AncestryTold> ancestry, Optional<HoldingTold> holding, UUID keeper) {
            var detail = ancestry.map(ToldDetail::new);
            var born = detail.flatMap(ToldDetail::born);
            var holder = holders.getOrDefault(id, id.node());
            boolean alias = standsFor.containsKey(id);
            // what may only be computed with does not show through the record that it stands for
            boolean shown =
                    !alias || detail.map(of -> of.granted().readsNumber()).orElse(false);
            return new PedigreeRow(
                    row(id),
                    number(id, detail.flatMap(ToldDetail::number).or(() -> holding.flatMap(ToldDetail::number))),
                    shown ? holding.map(of -> Sex.parse(of.sex())).orElse(Sex.UNKNOWN) : Sex.UNKNOWN,
                    shown ? born.map(ToldDetail.Born::written).orElse(null) : null,
                    shown ? born.map(ToldDetail.Born::earliest).orElse(null) : null,
                    shown ? born.map(ToldDetail.Born::latest).orElse(null) : null,
                    shown ? holding.map(HoldingTold::alive).orElse(alias) : true,
                    null,
                    ancestry.map(of -> of.founder() ? Origin.WILD_CAUGHT : Origin.UNKNOWN)
                            .orElse(Origin.UNKNOWN),
                    ancestry.flatMap(AncestryTold::dam).map(this::row).orElse(null),
                    detail.map(of -> of.sire(this::row)).orElseGet(Sire.Unknown::new),
                    keeper,
                    keeper,
                    standsFor.get(id),
                    detail.flatMap(ToldDetail::twin).map(this::row).orElse(null),
                    0,
                    charter.seat(holder).map(Charter.Seat::code).orElse("?"),
                    detail.map(of -> !of.granted().may(Purpose.PEDIGREE_VIEW, FieldGroup.PARENTAGE, Action.READ))
                            .orElse(false));
        }

        /** A record here of an animal that is dead where it is now. */
        private PedigreeRow diedElsewhere(AnimalId id, UUID record) {
            var holder = holders.get(id);
            return new PedigreeRow(
                    UUID.nameUUIDFromBytes(("dead " + id).getBytes(StandardCharsets.UTF_8)),
                    StudbookNumber.placeholder(charter.code(), id.id()).toString(),
                    Sex.UNKNOWN,
                    null,
                    null,
                    null,
                    false,
                    null,
                    Origin.UNKNOWN,
                    null,
                    new Sire.Unknown(),
                    null,
                    null,
                    record,
                    null,
                    0,
                    charter.seat(holder).map(Charter.Seat::code).orElse("?"),
                    false);
        }

        /** Of this population, of a node that issues numbers, and given once; else none. */
        private String number(AnimalId id, Optional<String> stated) {
            return stated.or(() -> Optional.ofNullable(numbersAsParents.get(id)))
                    .flatMap(this::number)
                    .filter(taken::add)
                    .orElseGet(() ->
                            StudbookNumber.placeholder(charter.code(), id.id()).toString());
        }

        private Optional<String> number(String text) {
            try {
                var number = StudbookNumber.parse(text);
                return number.populationCode().equals(charter.code())
                                && !StudbookNumber.isReserved(number.nodeCode())
                                && number.toString().equals(text)
                        ? Optional.of(text)
                        : Optional.empty();
            } catch (IllegalArgumentException notOne) {
                return Optional.empty();
            }
        }

        private void grant(UUID row, UUID keeper, Granted granted) {
            for (var purpose : Granted.PURPOSES) {
                for (var action : List.of(Action.READ, Action.COMPUTE)) {
                    var groups = granted.groups(purpose, action);
                    if (!groups.isEmpty()) {
                        extents.computeIfAbsent(
                                        new Extent(keeper, purpose, action, Set.copyOf(groups)), any -> new TreeSet<>())
                                .add(row);
                    }
                }
            }
        }

        Map<UUID, UUID> possiblySame(Map<AnimalId, AnimalId> claimedSame) {
            var possibly = new HashMap<UUID, UUID>();
            claimedSame.forEach((one, other) -> possibly.put(row(one), row(other)));
            return possibly;
        }

        List<Grant> grants(long version) {
            var grants = new ArrayList<Grant>();
            extents.forEach((extent, animals) -> grants.add(GrantsElsewhere.told(
                    UUID.nameUUIDFromBytes(
                            "%s %s %s".formatted(version, extent, animals).getBytes(StandardCharsets.UTF_8)),
                    extent.keeper,
                    animals,
                    extent.groups,
                    Set.of(extent.purpose),
                    Set.of(extent.action))));
            return List.copyOf(grants);
        }
    }
}
