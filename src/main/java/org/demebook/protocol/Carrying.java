package org.demebook.protocol;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.protocol.Statement.Accepted;
import org.demebook.protocol.Statement.Carried;
import org.demebook.protocol.Statement.Offered;
import org.demebook.protocol.Statement.Rejected;
import org.demebook.protocol.Statement.Released;
import org.demebook.signing.Signed;

/**
 * Entries of other journals inside statements: what they are, whether their signature holds, and what they say. A carried entry
 * brings its node's keys with it, so that it can be judged without that node's journal, in whatever order journals arrive.
 */
final class Carrying {
    private static final int REMEMBERED = 4_096;

    /** Compact forms whose signature was found good, with the chain that showed it. */
    private final Map<String, Entry> good = new LinkedHashMap<>() {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Entry> eldest) {
            return size() > REMEMBERED;
        }
    };

    private final UUID population;

    Carrying(UUID population) {
        this.population = population;
    }

    /** @throws BadStatement if it is no entry of this population that its node signed */
    Entry read(Carried carried) {
        var known = good.get(carried.entry().compact());
        if (known != null && known.node().equals(carried.keys().nodeId())) {
            return known;
        }
        var entry = Entry.read(carried.entry());
        if (!entry.population().equals(population)) {
            throw new BadStatement("carries an entry of another population");
        }
        if (!entry.node().equals(carried.keys().nodeId())) {
            throw new BadStatement("carries keys of another node");
        }
        var key = carried.keys()
                .key(carried.entry().keyId())
                .orElseThrow(() -> new BadStatement("carries an entry that none of its node's keys signed"));
        if (!carried.entry().isBy(key)) {
            throw new BadStatement("carries a forged entry");
        }
        good.put(carried.entry().compact(), entry);
        return entry;
    }

    /** All entries of other journals that are inside a statement, an outer one before those inside it. They were {@link #read} before. */
    List<Carried> within(Statement says) {
        var found = new ArrayList<Carried>();
        for (var inside : directlyWithin(says)) {
            found.add(inside);
            found.addAll(within(read(inside).says()));
        }
        return found;
    }

    private static List<Carried> directlyWithin(Statement says) {
        if (says instanceof Accepted accepted) {
            return List.of(accepted.offer());
        } else if (says instanceof Rejected rejected) {
            return List.of(rejected.offer());
        } else if (says instanceof Released released) {
            return List.of(released.acceptance());
        } else if (says instanceof Statement.Taken taken) {
            return List.of(taken.release());
        } else if (says instanceof Statement.Adopted adopted) {
            var all = new ArrayList<>(List.of(adopted.charter()));
            all.addAll(adopted.words());
            return all;
        } else if (says instanceof Statement.SameAnimalConfirmed confirmed) {
            return List.of(confirmed.claimed());
        }
        return List.of();
    }

    /** An offer to that node. */
    Entry offer(Carried carried, UUID transfer, String to) {
        var entry = read(carried);
        if (!(entry.says() instanceof Offered offered)
                || !offered.transfer().equals(transfer)
                || !TransferId.isOf(transfer, entry.node())
                || !offered.to().equals(to)
                || entry.node().equals(to)) {
            throw new BadStatement("carries no offer of this animal to this node");
        }
        return entry;
    }

    /** An acceptance, by the node to which it was offered, of the very offer. */
    Entry acceptance(Carried carried, UUID transfer, Signed offer, Offered offered) {
        var entry = read(carried);
        if (!(entry.says() instanceof Accepted accepted)
                || !accepted.transfer().equals(transfer)
                || !entry.node().equals(offered.to())
                || !accepted.offer().entry().equals(offer)) {
            throw new BadStatement("carries no acceptance of this offer by the node it was made to");
        }
        return entry;
    }

    /** A release by the giver, which holds the very acceptance. */
    Entry release(Carried carried, UUID transfer, String giver, Signed acceptance) {
        var entry = read(carried);
        if (!(entry.says() instanceof Released released)
                || !released.transfer().equals(transfer)
                || !entry.node().equals(giver)
                || !released.acceptance().entry().equals(acceptance)) {
            throw new BadStatement("carries no release of this animal for this acceptance");
        }
        return entry;
    }
}
