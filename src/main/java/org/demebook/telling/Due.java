package org.demebook.telling;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Stream;
import org.demebook.consent.Action;
import org.demebook.consent.Audience;
import org.demebook.consent.Consents;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.consent.Purpose;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Statement;
import org.demebook.registry.PedigreeRow;

/**
 * What is granted to be told of a population at one moment: for each record and node. Records that stand for others are told of, with
 * the parties of their own.
 */
final class Due {
    /** Another node, with all that it may see; or {@link Telling#EVERYBODY}, with what is public. */
    private record Listener(String node, List<Lens> lenses) {}

    private final UUID population;
    private final Map<String, String> codeOfNode;
    private final Instant at;
    private final Map<UUID, PedigreeRow> rows = new LinkedHashMap<>();
    private final Map<UUID, UUID> standsFor = new HashMap<>();
    private final List<Listener> listeners = new ArrayList<>();

    /** By record, then by what is granted, the nodes that it is granted to. */
    private final Map<UUID, Map<Granted, Set<String>>> granted = new LinkedHashMap<>();

    /** @param codeOfNode of the nodes that may be told anything */
    Due(UUID population, List<PedigreeRow> all, Map<String, String> codeOfNode, Consents consents, Instant at) {
        this.population = population;
        this.codeOfNode = codeOfNode;
        this.at = at;
        var byId = new HashMap<UUID, PedigreeRow>();
        all.forEach(row -> byId.put(row.id(), row));
        all.forEach(row -> standsFor.put(row.id(), canonical(byId, row)));
        all.stream().filter(row -> row.sameAsId() == null).forEach(row -> rows.put(row.id(), row));
        if (codeOfNode.isEmpty()) {
            return;
        }
        listeners.add(new Listener(Telling.EVERYBODY, lenses(Telling.EVERYBODY, consents)));
        new TreeMap<>(codeOfNode).keySet().forEach(node -> listeners.add(new Listener(node, lenses(node, consents))));
        for (var row : rows.values()) {
            var ofRow = grantedOf(row);
            if (!ofRow.isEmpty()) {
                granted.put(row.id(), ofRow);
            }
        }
    }

    /** A node is told by itself where it may more than everybody. */
    private Map<Granted, Set<String>> grantedOf(PedigreeRow row) {
        var ofRow = new HashMap<Granted, Set<String>>();
        var all = Granted.NOTHING;
        for (var listener : listeners) {
            var may = Granted.of(listener.lenses, row.subject());
            if (listener.node.equals(Telling.EVERYBODY)) {
                all = may;
            } else if (may.equals(all)) {
                continue;
            }
            if (!may.isNothing()) {
                ofRow.computeIfAbsent(may, any -> new TreeSet<>()).add(listener.node);
            }
        }
        return ofRow;
    }

    private List<Lens> lenses(String node, Consents consents) {
        var audience = node.equals(Telling.EVERYBODY)
                ? Audience.PUBLIC(population)
                : Audience.node(population, codeOfNode.get(node));
        return Granted.PURPOSES.stream()
                .map(purpose -> consents.lens(audience, purpose, at))
                .toList();
    }

    private static UUID canonical(Map<UUID, PedigreeRow> byId, PedigreeRow row) {
        var one = row;
        while (one.sameAsId() != null) {
            one = byId.get(one.sameAsId());
        }
        return one.id();
    }

    /** The records that have to have a name between nodes, each with the collection that lets it be told. */
    Map<UUID, UUID> named(Map<UUID, AnimalId> ids) {
        var wordings = new Wordings(rows, standsFor, ids);
        var named = new LinkedHashMap<UUID, UUID>();
        granted.forEach((id, ofRow) -> {
            var row = rows.get(id);
            var owner = row.ownerCollectionId() == null ? row.collectionId() : row.ownerCollectionId();
            ofRow.keySet().stream().flatMap(may -> wordings.named(row, may)).forEach(record -> {
                if (!ids.containsKey(record) && owner != null) {
                    named.putIfAbsent(record, owner);
                }
            });
        });
        return named;
    }

    /**
     * Everything that has to stand told, of animals that have a name between nodes and whose parents do.
     *
     * @param ids of those that have one
     * @param me id of this node
     * @param isHeld whether this node holds the animal, by the federated journals
     * @param custodian pseudonym of a collection
     */
    List<Telling> tellings(
            Map<UUID, AnimalId> ids, String me, Function<AnimalId, Boolean> isHeld, Function<UUID, String> custodian) {
        var wordings = new Wordings(rows, standsFor, ids);
        var all = new LinkedHashMap<Statement.Restricted, Set<String>>();
        granted.forEach((record, ofRow) -> {
            var row = rows.get(record);
            var id = ids.get(record);
            boolean held = id != null && isHeld.apply(id);
            ofRow.forEach((may, nodes) -> {
                if (!wordings.named(row, may).allMatch(ids::containsKey)) {
                    return;
                }
                for (var node : nodes) {
                    boolean everybody = node.equals(Telling.EVERYBODY);
                    if (id.node().equals(me)) {
                        all.computeIfAbsent(wordings.ancestry(row, may, everybody), any -> new TreeSet<>())
                                .add(node);
                    }
                    if (held) {
                        all.computeIfAbsent(
                                        wordings.holding(
                                                row,
                                                keeper(row, id, node, custodian),
                                                may,
                                                everybody,
                                                id.node().equals(me)),
                                        any -> new TreeSet<>())
                                .add(node);
                    }
                }
            });
        });
        var tellings = new ArrayList<Telling>();
        all.forEach((says, nodes) -> tellings.add(new Telling(says, nodes)));
        return tellings;
    }

    /** Which animals live together is told where that may be used; else each is with a keeper of its own. */
    private String keeper(PedigreeRow row, AnimalId id, String node, Function<UUID, String> custodian) {
        var collection = row.collectionId();
        return collection != null && mayUseCustody(row, node)
                ? custodian.apply(collection)
                : id.id().toString();
    }

    private boolean mayUseCustody(PedigreeRow row, String node) {
        return lenses(node)
                .filter(lens -> lens.purpose() == Purpose.PAIRING_COMPUTATION)
                .anyMatch(lens -> lens.may(row.subject(), FieldGroup.CUSTODY, Action.READ)
                        || lens.may(row.subject(), FieldGroup.CUSTODY, Action.COMPUTE));
    }

    private Stream<Lens> lenses(String node) {
        return listeners.stream()
                .filter(listener -> listener.node.equals(node))
                .flatMap(listener -> listener.lenses.stream());
    }

    /** Writes down for their keepers what these nodes are told now of these animals. */
    void disclosed(List<Telling> tellings, Map<UUID, AnimalId> ids, Consents consents) {
        var fresh = new HashMap<String, List<Lens>>();
        var recordOf = new HashMap<AnimalId, UUID>();
        ids.forEach((record, id) -> recordOf.put(id, record));
        for (var telling : tellings) {
            var row = rows.get(recordOf.get(animal(telling.says())));
            telling.readers()
                    .forEach(node ->
                            Granted.of(fresh.computeIfAbsent(node, any -> lenses(node, consents)), row.subject()));
        }
        fresh.values().forEach(lenses -> lenses.forEach(consents::disclosed));
    }

    private static AnimalId animal(Statement.Restricted says) {
        if (says instanceof Statement.AncestryTold told) {
            return told.animal();
        }
        return ((Statement.HoldingTold) says).animal();
    }

    /** What all of it rests on but the records: when this is another, it has to be worked out anew. */
    static Set<Lens.Basis> basis(UUID population, Map<String, String> codeOfNode, Consents consents, Instant at) {
        var basis = new HashSet<Lens.Basis>();
        codeOfNode
                .values()
                .forEach(code -> Granted.PURPOSES.forEach(
                        purpose -> basis.add(consents.lens(Audience.node(population, code), purpose, at)
                                .basis())));
        Granted.PURPOSES.forEach(purpose -> basis.add(
                consents.lens(Audience.PUBLIC(population), purpose, at).basis()));
        return basis;
    }
}
