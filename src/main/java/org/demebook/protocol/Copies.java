package org.demebook.protocol;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Predicate;
import org.demebook.protocol.Statement.Adopted;
import org.demebook.protocol.Statement.Carried;
import org.demebook.protocol.Statement.GoneStated;
import org.demebook.signing.VerifyingKey;

/** All journals that are held here, and what they say together. Follows from their entries alone, not from the order they came in. */
final class Copies {
    final SortedMap<String, Copy> byNode = new TreeMap<>();
    final Carrying carrying;
    private final Membership membership;

    Copies(Membership membership) {
        this.membership = membership;
        this.carrying = new Carrying(membership.population());
    }

    Copy of(String node) {
        return byNode.computeIfAbsent(
                node,
                missing -> new Copy(new Ledger(missing, membership.population(), membership.founder(), carrying)));
    }

    Optional<Ledger> ledger(String node) {
        return Optional.ofNullable(byNode.get(node)).map(copy -> copy.ledger);
    }

    Optional<Charter> charter() {
        return ledger(membership.founder()).flatMap(ledger -> ledger.charter);
    }

    /** Who takes part; before the charter is known, the founder alone. */
    boolean seats(String node) {
        return node.equals(membership.founder())
                || charter().map(charter -> charter.seats(node)).orElse(false);
    }

    /** With which key each node signs now, as far as it is known here. */
    Map<String, VerifyingKey> presentKeys() {
        var keys = new TreeMap<String, VerifyingKey>();
        byNode.forEach((node, copy) -> copy.keys().ifPresent(chain -> keys.put(node, chain.current())));
        return keys;
    }

    // ── custody ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** Follows an animal from the node that entered it through every release and taking. O(moves). */
    Whereabouts whereabouts(AnimalId animal) {
        var node = animal.node();
        var stint = stint(node, animal, Optional.empty(), Optional.empty());
        if (stint.isEmpty()) {
            return new Whereabouts.Unknown();
        }
        while (true) {
            var present = stint.get();
            var adopted = adoption(animal, node, present.began, Optional.of(present));
            if (adopted.isPresent()) {
                node = adopted.get().ledger.node;
                stint = adopted.map(found -> found.stint);
                continue;
            }
            if (!present.released) {
                var elsewhere = taken(animal, node);
                if (elsewhere.isEmpty()) {
                    return new Whereabouts.Held(node, present.leaving.isPresent());
                }
                node = elsewhere.get().ledger.node;
                stint = elsewhere.map(found -> found.stint);
                continue;
            }
            var transfer = present.leaving.orElseThrow();
            var to = of(node).ledger.outgoing.get(transfer).offered().to();
            var next = stint(to, animal, Optional.of(transfer), Optional.empty());
            if (next.isEmpty()) {
                var rescued = adoption(animal, to, Optional.of(transfer), Optional.empty());
                if (rescued.isEmpty()) {
                    return new Whereabouts.InTransit(node, to, transfer);
                }
                node = rescued.get().ledger.node;
                stint = rescued.map(found -> found.stint);
                continue;
            }
            node = to;
            stint = next;
        }
    }

    private Optional<Stint> stint(String node, AnimalId animal, Optional<UUID> began, Optional<Adopted> adoption) {
        return ledger(node).flatMap(ledger -> ledger.stints.getOrDefault(animal, List.of()).stream()
                .filter(stint -> stint.began.equals(began) && stint.adoption.equals(adoption))
                .findFirst());
    }

    private record Found(Ledger ledger, Stint stint) {}

    /** Who took the animal by a release of this node that it carries, while the release itself has not come here, or was kept back. */
    private Optional<Found> taken(AnimalId animal, String giver) {
        var given = of(giver).ledger;
        for (var copy : byNode.values()) {
            for (var stint : copy.ledger.stints.getOrDefault(animal, List.of())) {
                if (stint.began.isPresent()
                        && !given.releases.containsKey(stint.began.get())
                        && copy.ledger
                                .incoming
                                .get(stint.began.get())
                                .offer()
                                .node()
                                .equals(giver)) {
                    return Optional.of(new Found(copy.ledger, stint));
                }
            }
        }
        return Optional.empty();
    }

    /**
     * Of several, which takes a node that named two heirs, that by the node with the smallest id. What a node released before it was given up
     * stands.
     */
    private Optional<Found> adoption(AnimalId animal, String from, Optional<UUID> began, Optional<Stint> present) {
        for (var copy : byNode.values()) {
            for (var adopted : copy.ledger.adoptions) {
                if (adopted.animal().equals(animal)
                        && adopted.from().equals(from)
                        && adopted.stint().equals(began)
                        && present.map(stint -> stint.adoption.isEmpty()
                                        && (!stint.released
                                                || stint.releasedSeq > new Inheritance(carrying).size(adopted)))
                                .orElse(true)) {
                    return stint(copy.node(), animal, Optional.empty(), Optional.of(adopted))
                            .map(stint -> new Found(copy.ledger, stint));
                }
            }
        }
        return Optional.empty();
    }

    /** The animals that a node holds since it adopted them, each with the node that it was adopted from. */
    SortedMap<AnimalId, String> adopted(String node) {
        var adopted = new TreeMap<AnimalId, String>();
        ledger(node)
                .ifPresent(ledger -> ledger.adoptions.forEach(adoption -> {
                    var animal = adoption.animal();
                    boolean goesOn = ledger.present(animal)
                            .flatMap(stint -> stint.adoption)
                            .filter(adoption::equals)
                            .isPresent();
                    if (goesOn && isHeldBy(animal, node)) {
                        adopted.put(animal, adoption.from());
                    }
                }));
        return adopted;
    }

    private boolean isHeldBy(AnimalId animal, String node) {
        return whereabouts(animal) instanceof Whereabouts.Held held
                && held.node().equals(node);
    }

    TreeSet<AnimalId> animals() {
        var animals = new TreeSet<AnimalId>();
        byNode.values().forEach(copy -> animals.addAll(copy.ledger.stints.keySet()));
        return animals;
    }

    /** The entries that call a node gone and name this heir, in the order of the nodes that say so. */
    List<Carried> words(String gone, String heir) {
        return byNode.values().stream()
                .filter(copy -> !copy.node().equals(gone))
                .flatMap(copy -> Optional.ofNullable(copy.ledger.gone.get(gone)).stream()
                        .filter(entry -> ((GoneStated) entry.says()).heir().equals(heir))
                        .map(entry -> new Carried(entry.signed(), copy.keys().orElseThrow())))
                .toList();
    }

    // ── transfers ────────────────────────────────────────────────────────────────────────────────────────────────────

    Map<UUID, Transfer> transfers() {
        var transfers = new LinkedHashMap<UUID, Transfer>();
        for (var copy : byNode.values()) {
            copy.ledger.outgoing.keySet().forEach(id -> transfers.put(id, transfer(copy.ledger, id)));
        }
        return transfers;
    }

    private Transfer transfer(Ledger giver, UUID id) {
        var out = giver.outgoing.get(id);
        var offered = out.offered();
        return new Transfer(
                id,
                offered.animal(),
                giver.node,
                offered.to(),
                state(giver, id),
                out.offer().at(),
                offered.expiresAt());
    }

    private Transfer.State state(Ledger giver, UUID id) {
        var receiver = ledger(giver.outgoing.get(id).offered().to());
        var answer = receiver.map(ledger -> ledger.incoming.get(id));
        if (giver.releases.containsKey(id)) {
            return receiver.map(ledger -> ledger.taken.containsKey(id)).orElse(false)
                    ? Transfer.State.TAKEN
                    : Transfer.State.RELEASED;
        }
        if (answer.isPresent() && !answer.get().accepted()) {
            return Transfer.State.REJECTED;
        }
        if (giver.ended.containsKey(id)) {
            return Transfer.State.WITHDRAWN;
        }
        return answer.isPresent() ? Transfer.State.ACCEPTED : Transfer.State.OFFERED;
    }

    // ── what was told ────────────────────────────────────────────────────────────────────────────────────────────────

    Told told() {
        return told(any -> true);
    }

    /** @param which of what was told is looked at */
    Told told(Predicate<Statement.Restricted> which) {
        var sameAs = new SameAnimals(this).sameAs();
        var ancestry = new TreeMap<AnimalId, Statement.AncestryTold>();
        for (var copy : byNode.values()) {
            copy.ledger.ancestry.forEach(
                    (animal, tellings) -> last(tellings, which).ifPresent(told -> ancestry.put(animal, told)));
        }
        var inCircles = Circles.in(ancestry, sameAs);
        inCircles.forEach(animal -> ancestry.computeIfPresent(
                animal,
                (id, told) -> new Statement.AncestryTold(
                        id, told.born(), Optional.empty(), List.of(), told.founder(), told.detail())));
        var holdings = new TreeMap<AnimalId, Statement.HoldingTold>();
        var candidates = new TreeSet<AnimalId>();
        byNode.values().forEach(copy -> candidates.addAll(copy.ledger.holdings.keySet()));
        for (var animal : candidates) {
            holder(animal)
                    .flatMap(this::ledger)
                    .map(ledger -> ledger.holdings.get(animal))
                    .flatMap(tellings -> last(tellings, which))
                    .ifPresent(told -> holdings.put(animal, told));
        }
        return new Told(ancestry, holdings, inCircles, sameAs);
    }

    /** What a node told last of an animal that it held, whoever holds it now. */
    Optional<Statement.HoldingTold> holding(String node, AnimalId animal, Predicate<Statement.Restricted> which) {
        return ledger(node).map(ledger -> ledger.holdings.get(animal)).flatMap(tellings -> last(tellings, which));
    }

    private static <T extends Statement.Restricted> Optional<T> last(
            SortedMap<Long, T> tellings, Predicate<Statement.Restricted> which) {
        return tellings.values().stream().filter(which).reduce((earlier, later) -> later);
    }

    /** The node that holds it, or that held it last. */
    private Optional<String> holder(AnimalId animal) {
        var place = whereabouts(animal);
        if (place instanceof Whereabouts.Held held) {
            return Optional.of(held.node());
        }
        return place instanceof Whereabouts.InTransit transit ? Optional.of(transit.from()) : Optional.empty();
    }

    /** Heads of each journal whose copy is complete up to them. */
    SortedMap<String, Long> sizes() {
        var sizes = new TreeMap<String, Long>();
        byNode.forEach((node, copy) -> {
            if (copy.size() > 0) {
                sizes.put(node, copy.size());
            }
        });
        return sizes;
    }

    /** Own withdrawals and who has not said yet that they erased. */
    SortedMap<Long, SortedSet<String>> missingReceipts(String me, Iterable<String> others) {
        var missing = new TreeMap<Long, SortedSet<String>>();
        for (long withdrawal : of(me).ledger.withdrawals.keySet()) {
            var silent = new TreeSet<String>();
            for (var other : others) {
                var receipts = ledger(other).map(ledger -> ledger.purged.get(me));
                if (receipts.isEmpty() || !receipts.get().contains(withdrawal)) {
                    silent.add(other);
                }
            }
            if (!silent.isEmpty()) {
                missing.put(withdrawal, silent);
            }
        }
        return missing;
    }
}
