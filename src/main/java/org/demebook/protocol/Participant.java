package org.demebook.protocol;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.demebook.protocol.Statement.CharterStated;
import org.demebook.protocol.Statement.JournalOpened;
import org.demebook.signing.Malformed;
import org.jspecify.annotations.Nullable;

/**
 * One node's part in one population: writes its journal, takes in those of others, gives them away, and says where an animal is.
 *
 * <p>Every call that changes something is one change of the {@link Disk}; what it returned or gave away is durable. After a change that
 * failed the state is folded anew from the disk. Not for several threads at once. Keeps some 300 bytes an entry in memory.
 */
public final class Participant {
    private final Membership membership;
    private final Disk disk;
    private final Surroundings around;
    private final Follower follower;
    private final Fence fence = new Fence();
    private final Set<String> aside = new TreeSet<>();
    private @Nullable Desk desk;
    private @Nullable Told told;
    private long version = -1;

    /** @param follower hears of every entry that takes effect, own ones included, within the change */
    public Participant(Membership membership, Disk disk, Surroundings around, Follower follower) {
        this.membership = membership;
        this.disk = disk;
        this.around = around;
        this.follower = follower;
    }

    private <T> T change(Function<Desk, T> work) {
        try {
            return disk.change(() -> {
                var present = present();
                present.isDirty = false;
                lower(present);
                var done = work.apply(present);
                lower(present);
                version = disk.version();
                told = present.isDirty ? null : told;
                return done;
            });
        } catch (RuntimeException | Error e) {
            if (desk != null && desk.isDirty) {
                desk = null; // what was done before in the same change is not kept
            }
            throw e;
        }
    }

    /** Not before the charter says who might know more: the founder alone begins without one. */
    private void lower(Desk present) {
        if (present.me.equals(membership.founder()) || present.copies.charter().isPresent()) {
            fence.lower(others(present));
        }
    }

    private Desk present() {
        if (desk == null || version != disk.version()) {
            desk = new Desk(membership, disk, around, follower);
            version = disk.version();
            told = null;
        }
        return desk;
    }

    private Writing writing(Desk present) {
        return new Writing(present, fence, others(present));
    }

    private void say(Consumer<Writing> words) {
        change(present -> {
            words.accept(writing(present));
            return null;
        });
    }

    // ── what the node itself says ────────────────────────────────────────────────────────────────────────────────────

    /** Begins the journal, where there is none yet; at the founder with the charter. */
    public void open(String name, Optional<Charter> charter) {
        change(present -> {
            if (present.copies.of(present.me).ledger.keys().isEmpty()) {
                writing(present)
                        .write(Saying.toAll(new JournalOpened(membership.keys().get(), name)));
                charter.ifPresent(stated -> writing(present).write(Saying.toAll(new CharterStated(stated))));
            }
            return null;
        });
    }

    /**
     * Writes statements in one change, in this order, all or none.
     *
     * @throws Refused if one of them is not the node's to make now, or the node is fenced
     */
    public List<Entry> write(List<Saying> sayings) {
        return change(present -> {
            var entries = new ArrayList<Entry>(sayings.size());
            sayings.forEach(saying -> entries.add(writing(present).write(saying)));
            return entries;
        });
    }

    /** Offers an animal that the node holds, with what its receiver is handed. */
    public UUID offer(AnimalId animal, String to, Instant expiresAt, ObjectNode record) {
        return change(present -> writing(present).offer(animal, to, expiresAt, record));
    }

    /** Takes an offer back; nothing where it has ended. @throws Refused after the animal was released */
    public void withdraw(UUID transfer) {
        say(writing -> writing.withdraw(transfer));
    }

    /** Takes up an offer that another node made to this one. @throws Refused if it is known to have ended */
    public void accept(UUID transfer) {
        say(writing -> writing.answer(transfer, true));
    }

    public void reject(UUID transfer) {
        say(writing -> writing.answer(transfer, false));
    }

    /**
     * Claims that an animal that this node registered is one that another node registered.
     *
     * @return the claim's id
     */
    public UUID claimSame(AnimalId animal, AnimalId other) {
        return change(present -> writing(present).claimSame(animal, other));
    }

    /**
     * Agrees with another node's claim about an animal that this node registered; nothing where it has already.
     *
     * @throws Refused if it is known to have been taken back
     */
    public void confirmSame(SameAnimalClaim claim) {
        say(writing -> writing.confirmSame(claim));
    }

    /** Takes a claim back that this node made or confirmed; nothing where it has already. */
    public void reverseSame(UUID claim) {
        say(writing -> writing.reverseSame(claim));
    }

    /**
     * Does what follows without anybody's decision: releases what was accepted, takes what was released, ends what was rejected or
     * has expired, says what was erased. Nothing while fenced.
     */
    public void settle() {
        say(Writing::settle);
    }

    /**
     * States that a node is gone for good and which node may adopt its animals; set it aside as well. Does nothing where this was said
     * before.
     *
     * @throws Refused if this node named another heir before: it says so once
     */
    public void giveUp(String gone, String heir) {
        change(present -> {
            var before = present.copies.of(present.me).ledger.gone.get(gone);
            if (before == null || !((Statement.GoneStated) before.says()).heir().equals(heir)) {
                writing(present)
                        .write(Saying.toAll(new Statement.GoneStated(
                                gone, present.copies.of(gone).size(), heir)));
            }
            return null;
        });
    }

    /** The heirs that nodes named for one that is gone, as far as is known here: by the node that says so. */
    public SortedMap<String, String> heirs(String gone) {
        return read(present -> {
            var heirs = new TreeMap<String, String>();
            present.copies.byNode.forEach((node, copy) -> Optional.ofNullable(copy.ledger.gone.get(gone))
                    .ifPresent(entry -> heirs.put(node, ((Statement.GoneStated) entry.says()).heir())));
            return heirs;
        });
    }

    /** How many nodes have to name the same heir before it may adopt; 1 before the charter is known. */
    public int heirsNeeded() {
        return read(present -> present.copies.charter().map(Inheritance::needed).orElse(1));
    }

    /**
     * What an adoption has to carry; write it with the animals of that node.
     *
     * @throws Refused if fewer nodes than are needed named this one, as far as is known here, or one of them knows more of that node's journal
     */
    public Proof heirTo(String gone) {
        return read(present -> {
            var charter = present.copies
                    .charter()
                    .orElseThrow(() -> new Refused(
                            Refused.Reason.NOT_OPEN, "The charter of this population is not known here yet."));
            var words = present.copies.words(gone, present.me);
            if (!Inheritance.isEnough(words.size(), charter)) {
                throw new Refused(
                        Refused.Reason.NOT_THE_HEIR,
                        "%d of the %d nodes that are needed have said so far that this node may adopt."
                                .formatted(words.size(), Inheritance.needed(charter)));
            }
            long known = new Inheritance(present.copies.carrying).size(words);
            if (present.copies.of(gone).size() < known) {
                throw new Refused(
                        Refused.Reason.NOT_THE_HEIR,
                        "Another node has %d entries of its journal, and here are %d of them; what it gave away in the others is not to be adopted. They are fetched there; try again in a few minutes."
                                .formatted(known, present.copies.of(gone).size()));
            }
            return new Proof(charterEntry(present).orElseThrow(), words);
        });
    }

    /** The founder's charter, and the words of more than half of the nodes. */
    public record Proof(Statement.Carried charter, List<Statement.Carried> words) {}

    // ── the others ───────────────────────────────────────────────────────────────────────────────────────────────────

    /** The other nodes of the charter, but for those set aside, whose journals this one follows; before it is known, the founder. */
    public SortedSet<String> others() {
        return read(this::others);
    }

    private SortedSet<String> others(Desk present) {
        var others = new TreeSet<String>();
        others.add(membership.founder());
        present.copies.charter().ifPresent(charter -> charter.seats().forEach(seat -> others.add(seat.node())));
        others.remove(present.me);
        others.removeAll(aside);
        return others;
    }

    /** From where to ask for a journal; the own one while fenced. What is asked with it has to be taken in with it. */
    public Cursor cursor(String node) {
        return read(present -> {
            var copy = present.copies.of(node);
            return new Cursor(node, copy.size(), node.equals(present.me) ? fence.round : fence.epoch(node), false);
        });
    }

    /**
     * From where to ask a journal's own node once more, for entries of which others gave the digest alone; to be asked of that node and
     * taken in like any other. Empty: nothing of the kind is held here.
     */
    public Optional<Cursor> cursorAgain(String node) {
        return read(present -> Optional.of(present.copies.of(node).again)
                .filter(again -> again > 0)
                .map(again -> new Cursor(node, again - 1, fence.epoch(node), true)));
    }

    /**
     * What this node gives of a journal.
     *
     * @param most of entries, 1 to 2 000; fewer come where they are large
     * @throws FeedError typed
     */
    public FeedPage entries(String asker, String node, long after, int most) {
        return change(present -> new Giving(present, fence).entries(asker, node, after, most));
    }

    /**
     * Takes a page in, all of it or nothing: sizes and forms were checked by {@link PageForm}; then keys, head, sequence, consistency,
     * signatures, and of each statement whether its node may make it.
     *
     * @param from the node that gave it
     */
    public Intake take(String from, Cursor cursor, FeedPage page) {
        return change(present -> cursor.again()
                ? new Again(present, fence).take(from, cursor, page)
                : new Intaking(present, fence).take(from, cursor, page));
    }

    /** The node that was asked refused. */
    public void refused(String from, Cursor cursor, FeedError.Reason reason) {
        change(present -> {
            var own = cursor.node().equals(present.me) && cursor.epoch() == fence.round;
            if (own && reason == FeedError.Reason.NO_SUCH_JOURNAL) {
                fence.clear(from);
            } else if (reason == FeedError.Reason.CURSOR_FROM_THE_FUTURE && from.equals(cursor.node())) {
                present.raise(
                        Alarm.Kind.ROLLED_BACK,
                        from,
                        "It does not know entries of its own journal that are held here, %d of them: it was restored from a backup, or hides them."
                                .formatted(cursor.after()));
            }
            return null;
        });
    }

    /** Something that {@link PageForm} could not read. */
    public void unreadable(String from, RuntimeException why) {
        change(present -> {
            var oversize = why instanceof Malformed malformed && malformed.fault() == Malformed.Fault.TOO_LARGE;
            present.raise(
                    oversize ? Alarm.Kind.OVERSIZE : Alarm.Kind.MALFORMED,
                    from,
                    "It gave a page that cannot be read: " + why.getMessage());
            return null;
        });
    }

    // ── where things are ─────────────────────────────────────────────────────────────────────────────────────────────

    private <T> T read(Function<Desk, T> reading) {
        if (desk == null
                || version != disk.version()) { // the change was taken back with the transaction that it stood in
            disk.change((Supplier<@Nullable Void>) () -> {
                present();
                return null;
            });
        }
        return reading.apply(desk);
    }

    /** Whether the node may not write before others told it how far its journal went. */
    public boolean fenced() {
        return read(present -> {
            lower(present);
            return fence.isUp();
        });
    }

    /** The nodes that still have to tell. */
    public Set<String> awaited() {
        return read(present -> fence.awaited(others(present)));
    }

    /** The administrator says whether this node is to be waited for and followed. Kept by the caller, not on the disk. */
    public void setAside(String node, boolean isAside) {
        if (isAside) {
            aside.add(node);
        } else {
            aside.remove(node);
        }
    }

    public Whereabouts whereabouts(AnimalId animal) {
        return read(present -> present.copies.whereabouts(animal));
    }

    /** The animals that this node holds since it adopted them, each with the node that is gone. O(adoptions²). */
    public SortedMap<AnimalId, String> adopted() {
        return read(present -> present.copies.adopted(present.me));
    }

    public SortedSet<AnimalId> animals() {
        return read(present -> present.copies.animals());
    }

    /** How many entries of each journal this node holds and has checked. */
    public SortedMap<String, Long> heads() {
        return read(present -> present.copies.sizes());
    }

    /** Of each journal, who is known to have cosigned a head, and of how many entries; as told since the start. */
    public SortedMap<String, Map<String, Long>> witnesses() {
        return read(present -> {
            var witnesses = new TreeMap<String, Map<String, Long>>();
            present.copies.byNode.forEach((node, copy) -> witnesses.put(node, Map.copyOf(copy.witnesses)));
            return witnesses;
        });
    }

    public Optional<Charter> charter() {
        return read(present -> present.copies.charter());
    }

    private Optional<Statement.Carried> charterEntry(Desk present) {
        var founder = present.copies.of(membership.founder());
        return founder.ledger.charterEntry.map(
                entry -> new Statement.Carried(entry.signed(), founder.keys().orElseThrow()));
    }

    public Map<UUID, Transfer> transfers() {
        return read(present -> present.copies.transfers());
    }

    /** What was handed with an offer, as far as it was given to this node. */
    public Optional<ObjectNode> record(UUID transfer) {
        return read(present -> present.copies.byNode.values().stream()
                .map(copy -> copy.ledger.records.get(transfer))
                .filter(Objects::nonNull)
                .findFirst()
                .map(Statement.RecordSent::record));
    }

    /** What was told of animals, as far as it was told to this node: ancestry by the node that registered, holding by the one that holds. */
    public Told told() {
        return read(present -> {
            if (told == null) {
                told = present.copies.told();
            }
            return told;
        });
    }

    /**
     * The same of some of what was told: the last word among it. O(everything that was told).
     *
     * @param which ancestries and holdings that are looked at
     */
    public Told told(Predicate<Statement.Restricted> which) {
        return read(present -> present.copies.told(which));
    }

    /**
     * What a node told last of an animal that it held, whoever holds it now; as far as it was told to this node.
     *
     * @param which of its tellings are looked at
     */
    public Optional<Statement.HoldingTold> holding(
            String node, AnimalId animal, Predicate<Statement.Restricted> which) {
        return read(present -> present.copies.holding(node, animal, which));
    }

    /** Animals of which one node claims that they are others, and nobody agreed or took it back yet. */
    public SortedMap<AnimalId, AnimalId> claimedSame() {
        return read(present -> new SameAnimals(present.copies).claimed());
    }

    /** What became of every claim, in the order of the claiming nodes' ids and of their journals. O(claims). */
    public List<SameAnimalClaim> sameAnimalClaims() {
        return read(present -> new SameAnimals(present.copies).claims());
    }

    /** Of each own withdrawal, the nodes that have not said yet that they erased. */
    public SortedMap<Long, SortedSet<String>> missingReceipts() {
        return read(present -> present.copies.missingReceipts(present.me, others(present)));
    }

    public List<Alarm> alarms() {
        return disk.change(disk::alarms);
    }
}
