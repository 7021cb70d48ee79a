package org.demebook.protocol;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.merkle.Checkpoint;
import org.demebook.merkle.MerkleTree;
import org.demebook.merkle.SignedCheckpoint;
import org.demebook.protocol.Statement.Carried;
import org.demebook.protocol.Statement.JournalOpened;
import org.demebook.signing.KeyChain;
import org.demebook.signing.Malformed;
import org.demebook.signing.Signed;
import org.demebook.signing.SigningKey;

/** A node that follows no rule: it writes, signs and gives away whatever it likes with its own keys. */
final class Liar {
    static final Instant NOON = Instant.parse("2026-06-01T12:00:00Z");

    final UUID population;
    final SigningKey recovery = SigningKey.generate();
    SigningKey key;
    KeyChain chain;
    final List<String> compacts = new ArrayList<>();
    final List<byte[]> salts = new ArrayList<>();
    final MerkleTree tree = new MerkleTree();

    Liar(UUID population) {
        this.population = population;
        this.key = SigningKey.generate();
        this.chain = KeyChain.of(key, recovery.verifyingKey());
    }

    Liar(UUID population, SigningKey key, KeyChain chain) {
        this.population = population;
        this.key = key;
        this.chain = chain;
    }

    String id() {
        return chain.nodeId();
    }

    /** Everything the same up to there: it can go on with another story. */
    Liar forkedAfter(int entries) {
        var fork = new Liar(population, key, chain);
        for (int i = 0; i < entries; i++) {
            fork.append(compacts.get(i), salts.get(i));
        }
        return fork;
    }

    Liar opened() {
        return says(new JournalOpened(chain, "Nodeland"));
    }

    Liar says(Statement says) {
        return append(sign(says, compacts.size() + 1L).compact());
    }

    Signed sign(Statement says, long seq) {
        return Entry.sign(id(), population, seq, NOON, says, key).signed();
    }

    /** An entry with whatever payload. */
    Liar saysRaw(String type, ObjectNode says) {
        var payload = says.objectNode()
                .put("at", NOON.toString())
                .put("node", id())
                .put("population", population.toString())
                .put("seq", compacts.size() + 1L)
                .put("type", type);
        payload.set("says", says);
        return append(Signed.sign(Entry.TYPE, payload, key).compact());
    }

    Liar append(String compact) {
        return append(compact, new byte[MerkleTree.SALT_BYTES]);
    }

    private Liar append(String compact, byte[] salt) {
        compacts.add(compact);
        salts.add(salt);
        tree.append(MerkleTree.leafOf(
                isRestricted(compact), MerkleTree.digestOf(salt, compact.getBytes(StandardCharsets.US_ASCII))));
        return this;
    }

    private static boolean isRestricted(String compact) {
        try {
            return Kept.isRestricted(Entry.read(compact));
        } catch (BadStatement | Malformed e) {
            return false;
        }
    }

    Carried carried(int seq) {
        return new Carried(Signed.parse(compacts.get(seq - 1), Entry.MOST_CHARACTERS), chain);
    }

    Carried last() {
        return carried(compacts.size());
    }

    SignedCheckpoint head() {
        return head(tree.size());
    }

    SignedCheckpoint head(long size) {
        return signHead(size, tree.root(size));
    }

    SignedCheckpoint signHead(long size, byte[] root) {
        return SignedCheckpoint.sign(new Checkpoint(Evidence.origin(population, id()), size, root), id(), key);
    }

    FeedPage page(long after) {
        return page(after, tree.size(), head(), List.of(), List.of());
    }

    FeedPage page(long after, long size, SignedCheckpoint head, List<FeedPage.NodeHead> heads, List<Alarm> alarms) {
        var items = new ArrayList<FeedPage.Item>();
        for (int i = (int) after; i < size; i++) {
            items.add(new FeedPage.Item(Optional.of(compacts.get(i)), Optional.of(salts.get(i)), Optional.empty()));
        }
        return new FeedPage(
                id(),
                after,
                chain,
                head,
                items,
                Prefix.proof(tree, Math.min(after, size), size),
                Prefix.proof(tree, size, size),
                heads,
                size,
                alarms);
    }

    static FeedPage with(FeedPage page, List<FeedPage.Item> items) {
        return new FeedPage(
                page.node(),
                page.after(),
                page.keys(),
                page.head(),
                items,
                page.fromStart(),
                page.fromEnd(),
                page.heads(),
                page.highest(),
                page.alarms());
    }

    static FeedPage with(FeedPage page, SignedCheckpoint head) {
        return new FeedPage(
                page.node(),
                page.after(),
                page.keys(),
                head,
                page.items(),
                page.fromStart(),
                page.fromEnd(),
                page.heads(),
                page.highest(),
                page.alarms());
    }

    static FeedPage with(FeedPage page, KeyChain keys) {
        return new FeedPage(
                page.node(),
                page.after(),
                keys,
                page.head(),
                page.items(),
                page.fromStart(),
                page.fromEnd(),
                page.heads(),
                page.highest(),
                page.alarms());
    }
}
