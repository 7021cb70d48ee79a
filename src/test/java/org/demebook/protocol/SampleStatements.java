package org.demebook.protocol;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.protocol.Statement.Carried;
import org.demebook.signing.KeyChain;
import org.demebook.signing.SigningKey;

/** One statement of each kind, with keys that everybody can make again: a sale from the harbour node to the upland node, and what is beside. */
final class SampleStatements {
    static final UUID POPULATION = UUID.fromString("01a2b3c4-d5e6-7f80-91a2-b3c4d5e6f708");
    static final Instant MORNING = Instant.parse("2026-08-29T10:00:00Z");

    final SigningKey harbourKey = key(1);
    final SigningKey uplandKey = key(2);
    final KeyChain harbour = KeyChain.of(harbourKey, key(11).verifyingKey());
    final KeyChain upland = KeyChain.of(uplandKey, key(12).verifyingKey());
    final AnimalId neonate = animal(103, harbour);
    final AnimalId dam = animal(13, harbour);
    final AnimalId sire = animal(14, upland);

    private static SigningKey key(int number) {
        byte[] seed = new byte[32];
        seed[31] = (byte) number;
        return SigningKey.ofSeed(seed);
    }

    private static AnimalId animal(int number, KeyChain keys) {
        return new AnimalId(new UUID(0x4000L, 0x8000_0000_0000_0000L | number), keys.nodeId());
    }

    private static ObjectNode object() {
        return JsonNodeFactory.instance.objectNode();
    }

    Entry by(KeyChain keys, SigningKey key, long seq, Statement says) {
        return Entry.sign(keys.nodeId(), POPULATION, seq, MORNING, says, key);
    }

    private Carried carried(Entry entry, KeyChain keys) {
        return new Carried(entry.signed(), keys);
    }

    /** In an order in which they could be said, by whom each could be. */
    List<Entry> all() {
        var seats = new ArrayList<>(
                List.of(new Charter.Seat(harbour.nodeId(), "H"), new Charter.Seat(upland.nodeId(), "U")));
        seats.sort(Comparator.comparing(Charter.Seat::node));
        var charter = by(
                harbour,
                harbourKey,
                2,
                new Statement.CharterStated(new Charter("MC", object().put("locality", "Marrowfin Cay"), seats)));
        var record = object().put("number", "MC-H-103-X");
        var transfer = TransferId.of(UUID.fromString("01a2b3c4-0000-7000-8000-000000000000"), harbour.nodeId());
        var offer = by(
                harbour,
                harbourKey,
                4,
                new Statement.Offered(
                        transfer, neonate, upland.nodeId(), MORNING.plusSeconds(86_400), Digests.of(record)));
        var acceptance = by(upland, uplandKey, 2, new Statement.Accepted(transfer, carried(offer, harbour)));
        var release = by(harbour, harbourKey, 6, new Statement.Released(transfer, carried(acceptance, upland)));
        var rotated = harbour.rotated(harbourKey, key(3), key(11).verifyingKey());
        var claim = UUID.fromString("01a2b3c4-0000-7000-8000-000000000002");
        var claimed = by(harbour, harbourKey, 9, new Statement.SameAnimalClaimed(claim, dam, sire));
        var gone = by(upland, uplandKey, 7, new Statement.GoneStated(harbour.nodeId(), 6, upland.nodeId()));
        return List.of(
                by(harbour, harbourKey, 1, new Statement.JournalOpened(harbour, "Harbour")),
                charter,
                by(harbour, harbourKey, 3, new Statement.AnimalEntered(neonate)),
                offer,
                by(harbour, harbourKey, 5, new Statement.RecordSent(transfer, record)),
                acceptance,
                by(upland, uplandKey, 2, new Statement.Rejected(transfer, carried(offer, harbour))),
                by(harbour, harbourKey, 6, new Statement.Withdrawn(transfer)),
                release,
                by(upland, uplandKey, 3, new Statement.Taken(transfer, carried(release, harbour))),
                by(
                        harbour,
                        harbourKey,
                        7,
                        new Statement.AncestryTold(
                                neonate,
                                Optional.of("2026"),
                                Optional.of(dam),
                                List.of(new Statement.SireShare(sire, 1_000_000)),
                                false,
                                object())),
                by(upland, uplandKey, 4, new Statement.HoldingTold(neonate, "female", true, "keeper-7", object())),
                by(harbour, harbourKey, 8, new Statement.TellingsWithdrawn(List.of(5L, 7L))),
                by(upland, uplandKey, 5, new Statement.Purged(harbour.nodeId(), 8)),
                claimed,
                by(upland, uplandKey, 6, new Statement.SameAnimalConfirmed(claim, carried(claimed, harbour))),
                by(harbour, harbourKey, 10, new Statement.SameAnimalReversed(claim)),
                gone,
                by(
                        upland,
                        uplandKey,
                        8,
                        new Statement.Adopted(
                                dam,
                                harbour.nodeId(),
                                Optional.empty(),
                                carried(charter, harbour),
                                List.of(carried(gone, upland)))),
                by(rotated, key(3), 11, new Statement.KeysChanged(rotated)));
    }
}
