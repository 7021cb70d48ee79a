package org.demebook.protocol;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.demebook.merkle.SignedCheckpoint;
import org.demebook.signing.KeyChain;

/** Holds the heads of a journal that anybody showed against each other: two stories told to two nodes come to light here. */
record Heads(Desk desk) {
    private static final int MOST_UNCHECKED = 8;

    /** A head of another journal that came beside a page. */
    void hear(String from, FeedPage.NodeHead heard) {
        var node = heard.node();
        if (!heard.keys().nodeId().equals(node) || !desk.copies.seats(node)) {
            return;
        }
        if (!isSigned(heard.head(), heard.keys(), node)) {
            desk.raise(
                    Alarm.Kind.FORGED_SIGNATURE,
                    from,
                    "It passed on a head of %s that %s did not sign.".formatted(node, node));
            return;
        }
        var copy = desk.copies.of(node);
        var known = copy.keys();
        if (known.isPresent() && !keysFit(node, known.get(), heard.keys())) {
            return;
        }
        if (heard.head().checkpoint().size() <= copy.size()) {
            if (compare(copy, heard.keys(), heard.head())) {
                witness(copy, heard.head());
            }
        } else {
            keep(copy, heard.head());
        }
    }

    /** Whether its node signed a head. One that is held here already was verified when it came. */
    boolean isSigned(SignedCheckpoint head, KeyChain keys, String node) {
        var copy = desk.copies.byNode.get(node);
        boolean held = copy != null
                && copy.keys().filter(keys::extendsChain).isPresent()
                && copy.head.filter(known -> bare(known).equals(bare(head))).isPresent();
        return held || Evidence.isBy(head, node, keys, desk.membership.population());
    }

    private static String bare(SignedCheckpoint head) {
        return head.cosignaturesOf(Map.of()).text();
    }

    /** Whether one chain is the other's beginning, or stands above it; where they part for no such reason, an alarm says so. */
    boolean keysFit(String node, KeyChain known, KeyChain shown) {
        if (Evidence.parted(known, shown)) {
            desk.raise(
                    Alarm.Kind.FORKED_KEYS,
                    node,
                    Optional.of(Evidence.forkedKeys(known, shown)),
                    "Two chains of keys of %s part ways: its keys were stolen, or restored from a backup."
                            .formatted(node));
            return false;
        }
        return shown.extendsChain(known) || known.extendsChain(shown) || shown.overrules(known);
    }

    /** To be held against the copy once that goes so far. */
    void keep(Copy copy, SignedCheckpoint head) {
        var unchecked = new LinkedHashSet<>(desk.disk.unchecked(copy.node()));
        if (unchecked.add(bare(head)) && unchecked.size() <= MOST_UNCHECKED) {
            desk.disk.keepUnchecked(copy.node(), List.copyOf(unchecked));
        }
    }

    /** The copy has grown: what was beyond it may be within it now. */
    void grown(Copy copy) {
        var unchecked = desk.disk.unchecked(copy.node());
        if (unchecked.isEmpty()) {
            return;
        }
        var later = new ArrayList<String>();
        for (var text : unchecked) {
            var head = SignedCheckpoint.parse(text);
            if (head.checkpoint().size() <= copy.size()) {
                copy.keys().ifPresent(keys -> compare(copy, keys, head));
            } else {
                later.add(text);
            }
        }
        if (later.size() < unchecked.size()) {
            desk.disk.keepUnchecked(copy.node(), later);
        }
    }

    /** A head within the copy: its root is that of the copy, or its node has signed two stories. */
    boolean compare(Copy copy, KeyChain keys, SignedCheckpoint head) {
        var checkpoint = head.checkpoint();
        if (checkpoint.size() == 0 || Arrays.equals(checkpoint.root(), copy.tree.root(checkpoint.size()))) {
            return true;
        }
        var own = copy.head.filter(held -> held.checkpoint().size() >= checkpoint.size());
        var evidence = own.map(held -> Evidence.equivocation(
                keys,
                head,
                held,
                Prefix.proof(copy.tree, checkpoint.size(), held.checkpoint().size())));
        desk.raise(
                evidence.isPresent() ? Alarm.Kind.EQUIVOCATION : Alarm.Kind.INCONSISTENT_HEAD,
                copy.node(),
                evidence,
                "%s signed a head of %d entries that does not fit the entries it gave."
                        .formatted(copy.node(), checkpoint.size()));
        return false;
    }

    /** Who cosigned a head that fits. */
    void witness(Copy copy, SignedCheckpoint head) {
        for (var cosigner : desk.copies.presentKeys().entrySet()) {
            if (head.isCosignedBy(cosigner.getKey(), cosigner.getValue())) {
                copy.witnesses.merge(cosigner.getKey(), head.checkpoint().size(), Math::max);
            }
        }
    }
}
