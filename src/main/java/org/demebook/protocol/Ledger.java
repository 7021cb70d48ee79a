package org.demebook.protocol;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import org.demebook.protocol.Statement.Accepted;
import org.demebook.protocol.Statement.Adopted;
import org.demebook.protocol.Statement.AncestryTold;
import org.demebook.protocol.Statement.AnimalEntered;
import org.demebook.protocol.Statement.CharterStated;
import org.demebook.protocol.Statement.GoneStated;
import org.demebook.protocol.Statement.HoldingTold;
import org.demebook.protocol.Statement.JournalOpened;
import org.demebook.protocol.Statement.KeysChanged;
import org.demebook.protocol.Statement.Offered;
import org.demebook.protocol.Statement.RecordSent;
import org.demebook.protocol.Statement.Rejected;
import org.demebook.protocol.Statement.Released;
import org.demebook.protocol.Statement.SameAnimalClaimed;
import org.demebook.protocol.Statement.SameAnimalConfirmed;
import org.demebook.protocol.Statement.SameAnimalReversed;
import org.demebook.protocol.Statement.Taken;
import org.demebook.protocol.Statement.TellingsWithdrawn;
import org.demebook.protocol.Statement.Withdrawn;
import org.demebook.signing.KeyChain;
import org.jspecify.annotations.Nullable;

/**
 * What one journal says, folded in its own order. Depends on no other journal: what it rests on elsewhere it carries. So every node
 * that holds the same entries folds them alike, in whatever order journals arrive.
 */
final class Ledger {
    /** An offer of this node. */
    record Outgoing(Entry offer, Offered offered, Stint stint) {}

    /** An offer to this node that it answered. */
    record Incoming(Entry offer, Offered offered, Entry answer, boolean accepted) {}

    final String node;
    private final UUID population;
    private final String founder;
    private final Carrying carrying;

    /** With which keys the journal is written from an entry on. */
    private final TreeMap<Long, KeyChain> keys = new TreeMap<>();

    long folded;

    Optional<Entry> charterEntry = Optional.empty();
    Optional<Charter> charter = Optional.empty();

    final Map<AnimalId, List<Stint>> stints = new HashMap<>();
    final Map<UUID, Outgoing> outgoing = new LinkedHashMap<>();
    final Map<UUID, Incoming> incoming = new LinkedHashMap<>();
    final Map<UUID, Long> ended = new HashMap<>();
    final Map<UUID, Entry> releases = new HashMap<>();
    final Map<UUID, Long> taken = new HashMap<>();
    final Map<UUID, RecordSent> records = new HashMap<>();
    final SortedMap<AnimalId, SortedMap<Long, AncestryTold>> ancestry = new TreeMap<>();
    final SortedMap<AnimalId, SortedMap<Long, HoldingTold>> holdings = new TreeMap<>();
    /** What is told to some nodes only and was not withdrawn, by sequence number. */
    final SortedMap<Long, Statement.Restricted> restricted = new TreeMap<>();

    final SortedMap<Long, List<Long>> withdrawals = new TreeMap<>();
    final SortedSet<Long> withdrawn = new TreeSet<>();
    final Map<String, SortedSet<Long>> purged = new HashMap<>();
    final Map<UUID, Entry> claims = new LinkedHashMap<>();
    final Map<UUID, Entry> confirmations = new LinkedHashMap<>();
    final SortedSet<UUID> reversals = new TreeSet<>();
    final List<Adopted> adoptions = new ArrayList<>();
    /** Of each node that is called gone, by which entry. */
    final Map<String, Entry> gone = new HashMap<>();

    Ledger(String node, UUID population, String founder, Carrying carrying) {
        this.node = node;
        this.population = population;
        this.founder = founder;
        this.carrying = carrying;
    }

    Optional<KeyChain> keys() {
        return Optional.ofNullable(keys.lastEntry()).map(Map.Entry::getValue);
    }

    /** With which an entry is signed; it may state them itself. */
    Optional<KeyChain> keysAt(long seq) {
        return Optional.ofNullable(keys.floorEntry(seq)).map(Map.Entry::getValue);
    }

    /** The last entry that says with which keys the journal is written; 0 for none. */
    long keysStatedAt() {
        return keys.isEmpty() ? 0 : keys.lastKey();
    }

    /** The stint that goes on now. */
    Optional<Stint> present(AnimalId animal) {
        var all = stints.getOrDefault(animal, List.of());
        return all.isEmpty() || all.get(all.size() - 1).released
                ? Optional.empty()
                : Optional.of(all.get(all.size() - 1));
    }

    /** Why an entry after the last one would have no effect. Its signature and number were checked. */
    Optional<Fault> fault(Entry entry) {
        try {
            return Optional.ofNullable(found(entry));
        } catch (BadStatement e) {
            return Optional.of(
                    new Fault(Alarm.Kind.FALSE_PROOF, "Entry %d %s.".formatted(entry.seq(), e.getMessage())));
        }
    }

    private static Fault foreign(String sentence) {
        return new Fault(Alarm.Kind.FOREIGN_AUTHORITY, sentence);
    }

    private static Fault replayed(String sentence) {
        return new Fault(Alarm.Kind.REPLAYED, sentence);
    }

    private static Fault notHeld(AnimalId animal) {
        return new Fault(Alarm.Kind.NOT_ITS_HOLDER, "Its node does not hold %s at that place.".formatted(animal));
    }

    private @Nullable Fault found(Entry entry) {
        var says = entry.says();
        if ((entry.seq() == 1) != (says instanceof JournalOpened)) {
            return new Fault(Alarm.Kind.BROKEN_SEQUENCE, "A journal is opened by its first entry, and by no other.");
        }
        if (says instanceof JournalOpened opened) {
            return opened.keys().nodeId().equals(node) ? null : foreign("It opens with the keys of another node.");
        } else if (says instanceof CharterStated) {
            return node.equals(founder) ? null : foreign("Only the founding node states the charter.");
        } else if (says instanceof KeysChanged changed) {
            return changed.keys().nodeId().equals(node)
                            && keys().map(before -> changed.keys().extendsChain(before)
                                            || changed.keys().overrules(before))
                                    .orElse(false)
                    ? null
                    : foreign("These keys do not follow those before.");
        } else if (says instanceof AnimalEntered entered) {
            if (!entered.animal().node().equals(node)) {
                return foreign("%s carries another node's name.".formatted(entered.animal()));
            }
            return stints.containsKey(entered.animal()) ? replayed("It was entered before.") : null;
        } else if (says instanceof Offered offered) {
            return ofOffer(offered);
        } else if (says instanceof Withdrawn ended) {
            return isOpen(ended.transfer()) ? null : replayed("No offer %s is open.".formatted(ended.transfer()));
        } else if (says instanceof Accepted accepted) {
            return ofAnswer(accepted.transfer(), accepted.offer());
        } else if (says instanceof Rejected rejected) {
            return ofAnswer(rejected.transfer(), rejected.offer());
        } else if (says instanceof Released released) {
            var out = outgoing.get(released.transfer());
            if (out == null || !isOpen(released.transfer())) {
                return out == null ? notHeldOf(released.transfer()) : replayed("This offer has ended.");
            }
            carrying.acceptance(released.acceptance(), released.transfer(), out.offer.signed(), out.offered);
            return null;
        } else if (says instanceof Taken take) {
            return ofTaking(take);
        } else if (says instanceof Adopted adopted) {
            return ofAdoption(adopted);
        } else if (says instanceof GoneStated stated) {
            return ofGone(stated);
        } else if (says instanceof AncestryTold told) {
            if (!told.animal().node().equals(node)) {
                return foreign("Who its parents are is told by the node that registered it.");
            }
            return stints.containsKey(told.animal()) ? null : notHeld(told.animal());
        } else if (says instanceof HoldingTold told) {
            return present(told.animal()).isPresent() ? null : notHeld(told.animal());
        } else if (says instanceof RecordSent sent) {
            var out = outgoing.get(sent.transfer());
            return out != null && out.offered.record().equals(Digests.of(sent.record()))
                    ? null
                    : new Fault(Alarm.Kind.FALSE_PROOF, "The offer names another record, or none was made.");
        } else if (says instanceof TellingsWithdrawn withdrawal) {
            return withdrawal.entries().stream().allMatch(seq -> seq < entry.seq() && !withdrawn.contains(seq))
                    ? null
                    : replayed("It withdraws what was withdrawn before, or is not told yet.");
        } else if (says instanceof SameAnimalClaimed claimed) {
            return !claimed.animal().node().equals(node) || claimed.animal().equals(claimed.other())
                    ? foreign("It claims for an animal that its node did not register.")
                    : claims.containsKey(claimed.claim()) ? replayed("It was claimed before.") : null;
        } else if (says instanceof SameAnimalConfirmed confirmed) {
            var claim = carrying.read(confirmed.claimed());
            return claim.says() instanceof SameAnimalClaimed claimed
                            && claimed.claim().equals(confirmed.claim())
                            && claimed.animal().node().equals(claim.node())
                            && claimed.other().node().equals(node)
                    ? confirmations.containsKey(confirmed.claim()) ? replayed("It was confirmed before.") : null
                    : foreign(
                            "Only the node that registered the other animal confirms, and what the node of the one claimed.");
        } else if (says instanceof SameAnimalReversed reversed) {
            return claims.containsKey(reversed.claim()) || confirmations.containsKey(reversed.claim())
                    ? reversals.contains(reversed.claim()) ? replayed("It was reversed before.") : null
                    : foreign("It reverses what its node neither claimed nor confirmed.");
        }
        return null;
    }

    private Fault notHeldOf(UUID transfer) {
        return new Fault(Alarm.Kind.NOT_ITS_HOLDER, "It made no offer %s.".formatted(transfer));
    }

    private @Nullable Fault ofOffer(Offered offered) {
        if (outgoing.containsKey(offered.transfer()) || incoming.containsKey(offered.transfer())) {
            return replayed("This transfer was offered before.");
        }
        if (!TransferId.isOf(offered.transfer(), node)) {
            return foreign("This transfer carries another node's name.");
        }
        if (offered.to().equals(node)) {
            return foreign("A node does not offer to itself.");
        }
        var stint = present(offered.animal());
        return stint.isPresent() && stint.get().leaving.isEmpty() ? null : notHeld(offered.animal());
    }

    private @Nullable Fault ofAnswer(UUID transfer, Statement.Carried carried) {
        if (incoming.containsKey(transfer)) {
            return replayed("This offer was answered before.");
        }
        carrying.offer(carried, transfer, node);
        return null;
    }

    private @Nullable Fault ofTaking(Taken take) {
        var in = incoming.get(take.transfer());
        if (in == null || !in.accepted) {
            return notHeldOf(take.transfer());
        }
        if (taken.containsKey(take.transfer())) {
            return replayed("This release was used before.");
        }
        carrying.release(take.release(), take.transfer(), in.offer.node(), in.answer.signed());
        return present(in.offered.animal()).isPresent() ? replayed("Its node holds the animal already.") : null;
    }

    private @Nullable Fault ofAdoption(Adopted adopted) {
        var charter = carrying.read(adopted.charter());
        if (!charter.node().equals(founder) || !(charter.says() instanceof CharterStated stated)) {
            return foreign("It carries no charter of the founding node.");
        }
        new Inheritance(carrying).require(adopted, node, stated.charter());
        return present(adopted.animal()).isPresent() ? replayed("Its node holds the animal already.") : null;
    }

    private @Nullable Fault ofGone(GoneStated stated) {
        if (stated.gone().equals(node) || stated.heir().equals(stated.gone())) {
            return foreign("No node says of itself that it is gone, or has a gone one adopt.");
        }
        return gone.containsKey(stated.gone())
                ? replayed("It called this node gone before, and named the heir of its animals.")
                : null;
    }

    boolean isOpen(UUID transfer) {
        return outgoing.containsKey(transfer) && !ended.containsKey(transfer) && !releases.containsKey(transfer);
    }

    /** Folds an entry in that has no {@link #fault}. */
    void fold(Entry entry) {
        new Folding(this, carrying).fold(entry);
        if (entry.says() instanceof JournalOpened opened) {
            keys.put(entry.seq(), opened.keys());
        } else if (entry.says() instanceof KeysChanged changed) {
            keys.put(entry.seq(), changed.keys());
        }
        folded = entry.seq();
    }

    /** What this entry told is told no more. */
    void forget(long seq) {
        var says = restricted.remove(seq);
        if (says instanceof AncestryTold told) {
            remove(ancestry, told.animal(), seq);
        } else if (says instanceof HoldingTold told) {
            remove(holdings, told.animal(), seq);
        } else if (says instanceof RecordSent sent) {
            records.remove(sent.transfer());
        }
    }

    private static <T> void remove(SortedMap<AnimalId, SortedMap<Long, T>> told, AnimalId animal, long seq) {
        var tellings = told.get(animal);
        tellings.remove(seq);
        if (tellings.isEmpty()) {
            told.remove(animal);
        }
    }
}
