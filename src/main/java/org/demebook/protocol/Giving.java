package org.demebook.protocol;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.demebook.merkle.Checkpoint;
import org.demebook.merkle.SignedCheckpoint;

/** What a node gives others of the journals that it holds. */
record Giving(Desk desk, Fence fence) {
    static final int MOST_ENTRIES = 2_000;
    private static final int MOST_CHARACTERS = 1_000_000;
    private static final int MOST_ALARMS = 16;

    FeedPage entries(String asker, String node, long after, int most) {
        if (most < 1 || most > MOST_ENTRIES) {
            throw new FeedError(FeedError.Reason.TOO_MANY);
        }
        if (!desk.copies.seats(asker)) {
            throw new FeedError(FeedError.Reason.NOT_A_MEMBER);
        }
        if (node.equals(asker)) {
            fence.asked(node);
        }
        var copy = desk.copies.byNode.get(node);
        if (copy == null) {
            throw noneOf(node);
        }
        if (!node.equals(asker) && after > copy.size()) {
            throw new FeedError(FeedError.Reason.CURSOR_FROM_THE_FUTURE);
        }
        var head = head(copy);
        long size = head.checkpoint().size();
        var from = Math.min(after, size);
        var items = items(copy, asker, from, upToTheKeyInUse(copy, from, (int) Math.min(most, size - from), size));
        long end = from + items.size();
        if (end < size && node.equals(desk.me) && isKeyStated(copy) && copy.ledger.keysStatedAt() <= end) {
            // whoever held a sign of more than it was given would wait for it, were it lost here before it was given to
            // anybody;
            // a key that is stated beyond the page cannot sign for it: who starts anew knows the keys from the entries
            // alone
            size = end;
            head = signed(copy, end);
        }
        return new FeedPage(
                node,
                after,
                copy.keys().orElseThrow(() -> noneOf(node)),
                head,
                items,
                Prefix.proof(copy.tree, from, size),
                Prefix.proof(copy.tree, end, size),
                heads(node),
                desk.highest(node),
                alarms());
    }

    private FeedError noneOf(String node) {
        return new FeedError(
                desk.highest(node) == 0 ? FeedError.Reason.NO_SUCH_JOURNAL : FeedError.Reason.ONLY_SIGNS_OF_IT);
    }

    /**
     * The own head is signed anew when the journal has grown, while fenced too, since what a restore leaves is a true beginning; unless the key in use is not stated there yet: nobody could tell whose
     * it is. Of another's journal, the last that was checked.
     */
    private SignedCheckpoint head(Copy copy) {
        if (copy.node().equals(desk.me) && copy.headSize() < copy.size() && isKeyStated(copy)) {
            var signed = signed(copy, copy.size());
            desk.isDirty = true;
            desk.disk.keepHead(desk.me, signed.text());
            copy.head = Optional.of(signed);
        }
        return copy.head.orElseThrow(() -> noneOf(copy.node()));
    }

    private SignedCheckpoint signed(Copy own, long size) {
        var checkpoint =
                new Checkpoint(Evidence.origin(desk.membership.population(), desk.me), size, own.tree.root(size));
        return SignedCheckpoint.sign(checkpoint, desk.me, desk.membership.key().get());
    }

    /**
     * A head of the page's own length can be signed only where the key in use is stated within it; as long as it is stated nowhere, the page goes to
     * the head that there is.
     */
    private int upToTheKeyInUse(Copy copy, long from, int most, long size) {
        if (!copy.node().equals(desk.me)) {
            return most;
        }
        long least = (isKeyStated(copy) ? Math.min(copy.ledger.keysStatedAt(), size) : size) - from;
        return least > most && least <= MOST_ENTRIES ? (int) least : most;
    }

    private boolean isKeyStated(Copy own) {
        return own.ledger.keys().equals(Optional.of(desk.membership.keys().get()));
    }

    private List<FeedPage.Item> items(Copy copy, String asker, long after, int most) {
        var items = new ArrayList<FeedPage.Item>();
        int characters = 0;
        if (most == 0) {
            return items;
        }
        for (var kept : desk.disk.entries(copy.node(), after, most)) {
            var readable = kept.entry().isPresent() && mayRead(copy, asker, kept);
            characters += readable ? kept.entry().get().length() : 0;
            if (characters > MOST_CHARACTERS && !items.isEmpty()) {
                break;
            }
            items.add(
                    readable
                            ? new FeedPage.Item(kept.entry(), kept.salt(), Optional.empty())
                            : new FeedPage.Item(Optional.empty(), Optional.empty(), Optional.of(kept.digest())));
        }
        return items;
    }

    /** What is restricted is given by its own node to its readers, and back to that node by whoever holds it. */
    private boolean mayRead(Copy copy, String asker, Kept kept) {
        if (!copy.restricted.contains(kept.seq())) {
            return true;
        }
        if (copy.node().equals(asker)) {
            return true;
        }
        return copy.node().equals(desk.me)
                && kept.readers().map(readers -> readers.contains(asker)).orElse(true);
    }

    /** Of journals that are held here up to these heads; not of the own one, which may yet be lost with what is in it. */
    private List<FeedPage.NodeHead> heads(String except) {
        var heads = new ArrayList<FeedPage.NodeHead>();
        for (var copy : desk.copies.byNode.values()) {
            if (!copy.node().equals(except)
                    && !copy.node().equals(desk.me)
                    && copy.head.isPresent()
                    && copy.keys().isPresent()) {
                heads.add(new FeedPage.NodeHead(copy.node(), copy.keys().get(), copy.head.get()));
            }
        }
        return heads;
    }

    private List<Alarm> alarms() {
        return desk.disk.alarms().stream()
                .filter(alarm -> alarm.isProven() && Evidence.standsAlone(alarm.kind()))
                .limit(MOST_ALARMS)
                .toList();
    }
}
