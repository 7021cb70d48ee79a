package org.demebook.protocol;

import java.util.HashMap;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import org.demebook.protocol.Statement.SameAnimalClaimed;
import org.demebook.protocol.Statement.SameAnimalConfirmed;

/** Animals that were registered twice, as both their nodes agree and neither took back. */
record SameAnimals(Copies copies) {

    /** Of each that another stands for, the smallest id of all that are the same. */
    SortedMap<AnimalId, AnimalId> sameAs() {
        var smaller = new HashMap<AnimalId, AnimalId>();
        for (var copy : copies.byNode.values()) {
            for (var confirmation : copy.ledger.confirmations.values()) {
                var confirmed = (SameAnimalConfirmed) confirmation.says();
                var claim = copies.carrying.read(confirmed.claimed());
                if (claim.says() instanceof SameAnimalClaimed claimed
                        && !reversed(copy.ledger, confirmed.claim())
                        && !copies.ledger(claim.node())
                                .map(ledger -> reversed(ledger, confirmed.claim()))
                                .orElse(false)) {
                    join(smaller, claimed.animal(), claimed.other());
                }
            }
        }
        var sameAs = new TreeMap<AnimalId, AnimalId>();
        smaller.keySet().forEach(animal -> sameAs.put(animal, smallest(smaller, animal)));
        return sameAs;
    }

    /** Animals of which one node claims that they are others, and nobody agreed or took it back yet. */
    SortedMap<AnimalId, AnimalId> claimed() {
        var open = new TreeMap<AnimalId, AnimalId>();
        for (var copy : copies.byNode.values()) {
            for (var claim : copy.ledger.claims.values()) {
                if (claim.says() instanceof SameAnimalClaimed claimed && isOpen(claimed)) {
                    open.put(claimed.animal(), claimed.other());
                }
            }
        }
        return open;
    }

    private boolean isOpen(SameAnimalClaimed claimed) {
        return copies.byNode.values().stream()
                .noneMatch(copy -> copy.ledger.confirmations.containsKey(claimed.claim())
                        || reversed(copy.ledger, claimed.claim()));
    }

    private static boolean reversed(Ledger ledger, UUID claim) {
        return ledger.reversals.contains(claim);
    }

    private static void join(Map<AnimalId, AnimalId> smaller, AnimalId one, AnimalId other) {
        var a = smallest(smaller, one);
        var b = smallest(smaller, other);
        if (!a.equals(b)) {
            smaller.put(a.compareTo(b) < 0 ? b : a, a.compareTo(b) < 0 ? a : b);
        }
    }

    private static AnimalId smallest(Map<AnimalId, AnimalId> smaller, AnimalId animal) {
        var root = animal;
        while (smaller.containsKey(root)) {
            root = smaller.get(root);
        }
        return root;
    }
}
