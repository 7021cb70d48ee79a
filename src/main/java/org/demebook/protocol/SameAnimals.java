package org.demebook.protocol;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
        claims().stream()
                .filter(claim -> claim.state() == SameAnimalClaim.State.CLAIMED)
                .forEach(claim -> open.put(claim.animal(), claim.other()));
        return open;
    }

    /** Every claim, in the order of the claiming nodes' ids and of their journals. */
    List<SameAnimalClaim> claims() {
        var claims = new ArrayList<SameAnimalClaim>();
        for (var copy : copies.byNode.values()) {
            for (var entry : copy.ledger.claims.values()) {
                var claimed = (SameAnimalClaimed) entry.says();
                claims.add(new SameAnimalClaim(
                        claimed.claim(),
                        claimed.animal(),
                        claimed.other(),
                        entry.at(),
                        state(copy.ledger, entry, claimed)));
            }
        }
        return claims;
    }

    /** No third node has a say in it, whatever id it gives a claim of its own. */
    private SameAnimalClaim.State state(Ledger claimant, Entry entry, SameAnimalClaimed claimed) {
        var other = copies.ledger(claimed.other().node());
        boolean confirmed = other.flatMap(ledger -> confirmation(ledger, claimed.claim()))
                .filter(confirmation -> confirmation.claimed().entry().equals(entry.signed()))
                .isPresent();
        if (reversed(claimant, claimed.claim())
                || confirmed
                        && other.map(ledger -> reversed(ledger, claimed.claim()))
                                .orElse(false)) {
            return SameAnimalClaim.State.REVERSED;
        }
        return confirmed ? SameAnimalClaim.State.CONFIRMED : SameAnimalClaim.State.CLAIMED;
    }

    private static Optional<SameAnimalConfirmed> confirmation(Ledger ledger, UUID claim) {
        return Optional.ofNullable(ledger.confirmations.get(claim)).map(entry -> (SameAnimalConfirmed) entry.says());
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
