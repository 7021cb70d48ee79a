package org.demebook.signing;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.demebook.signing.Malformed.Fault;

/**
 * The keys of a node, from the first on: the node's key document, also carried by the first entry of each of its journals. A
 * node's id is the thumbprint of its first key.
 *
 * <p>It begins with the first key's own word, which commits to a recovery key; the node's id alone does not. Each further key is
 * told by the key before, or by the recovery key, and by itself. A chain that does not hold cannot be made: all of it is
 * verified, once.
 */
public final class KeyChain {
    /** What a statement about a key is called in its header. */
    public static final String TYPE = "demebook-key";

    /** The most keys that a chain may have. */
    public static final int MOST_KEYS = 256;

    private final Signed founding;
    private final List<Link> links;
    private final List<KeyStatement> statements = new ArrayList<>();

    /**
     * A key and its successor, who say the same: {@code {"node":id,"number":n,"key":x,"recovery":thumbprint,"by":x}}.
     *
     * @param byOld by the key before, or by the recovery key that was committed to before; {@code by} is its {@code x}
     * @param byNew by the new key
     */
    public record Link(Signed byOld, Signed byNew) {}

    private KeyChain(Signed founding, List<Link> links) {
        this.founding = founding;
        this.links = List.copyOf(links);
        verify();
    }

    /** A new node. @param recovery of a pair of keys that is kept away from the node */
    public static KeyChain of(SigningKey first, VerifyingKey recovery) {
        var key = first.verifyingKey();
        var statement = new KeyStatement(key.thumbprint(), 1, key, recovery.thumbprint(), key);
        return trusted(Signed.sign(TYPE, statement.toJson(), first), List.of());
    }

    /**
     * The chain with a further key.
     *
     * @param current the key now in use
     * @param recovery the recovery key from now on; may stay the same
     * @throws IllegalArgumentException if {@code current} is not the key in use, or the next key was of this node before
     */
    public KeyChain rotated(SigningKey current, SigningKey next, VerifyingKey recovery) {
        if (!current.verifyingKey().equals(current())) {
            throw new IllegalArgumentException(
                    current + " is not the key in use, " + current().thumbprint());
        }
        return followed(current, next, recovery);
    }

    /**
     * The chain with a further key where the one in use is lost or stolen.
     *
     * @param nextRecovery another one, since the recovery key's public half is known from now on
     * @throws IllegalArgumentException if {@code recoveryKey} is not the one committed to, or a key was in use before
     */
    public KeyChain recovered(SigningKey recoveryKey, SigningKey next, VerifyingKey nextRecovery) {
        if (!recoveryKey.verifyingKey().thumbprint().equals(recovery())) {
            throw new IllegalArgumentException(recoveryKey + " is not the recovery key committed to, " + recovery());
        }
        return followed(recoveryKey, next, nextRecovery);
    }

    private KeyChain followed(SigningKey by, SigningKey next, VerifyingKey recovery) {
        var statement = new KeyStatement(
                nodeId(), statements.size() + 1, next.verifyingKey(), recovery.thumbprint(), by.verifyingKey());
        List<Link> further = new ArrayList<>(links);
        further.add(new Link(Signed.sign(TYPE, statement.toJson(), by), Signed.sign(TYPE, statement.toJson(), next)));
        return trusted(founding, further);
    }

    private static KeyChain trusted(Signed founding, List<Link> links) {
        try {
            return new KeyChain(founding, links);
        } catch (Malformed e) {
            throw new IllegalArgumentException(e.getMessage(), e);
        }
    }

    public Signed founding() {
        return founding;
    }

    /** One for each further key, in order. */
    public List<Link> links() {
        return links;
    }

    /** The thumbprint of the first key. */
    public String nodeId() {
        return statements.get(0).node();
    }

    public VerifyingKey first() {
        return statements.get(0).key();
    }

    public VerifyingKey current() {
        return last().key();
    }

    /** The thumbprint of the recovery key now committed to. */
    public String recovery() {
        return last().recovery();
    }

    /** All keys, in the order of their numbers, which start at 1. */
    public List<VerifyingKey> keys() {
        return statements.stream().map(KeyStatement::key).toList();
    }

    /** The key of that thumbprint, if it is or was this node's. O(keys). */
    public Optional<VerifyingKey> key(String keyId) {
        if (founding.keyId().equals(keyId)) {
            return Optional.of(first());
        }
        for (int i = 0; i < links.size(); i++) {
            if (links.get(i).byNew().keyId().equals(keyId)) {
                return Optional.of(statements.get(i + 1).key());
            }
        }
        return Optional.empty();
    }

    /** Whether this is that chain, or that chain with further keys. */
    public boolean extendsChain(KeyChain earlier) {
        return founding.equals(earlier.founding)
                && links.size() >= earlier.links.size()
                && links.subList(0, earlier.links.size()).equals(earlier.links);
    }

    /**
     * Whether, of two chains of one node that part, this is the one to go on with: where they part, this one was recovered and the
     * other rotated. A thief of the key in use can rotate it; only the holder of the recovery key can recover. Neither overrules
     * the other where both were rotated, or both recovered: then the node has contradicted itself.
     */
    public boolean overrules(KeyChain other) {
        if (!founding.equals(other.founding)) {
            return false;
        }
        int parting = 0;
        int shorter = Math.min(links.size(), other.links.size());
        while (parting < shorter && links.get(parting).equals(other.links.get(parting))) {
            parting++;
        }
        return parting < shorter && isRecovered(parting) && !other.isRecovered(parting);
    }

    /** {@code {"founding":compact,"links":[[byOld,byNew],…]}}. */
    public ObjectNode toJson() {
        var json = JsonNodeFactory.instance.objectNode().put("founding", founding.compact());
        var array = json.putArray("links");
        links.forEach(link ->
                array.addArray().add(link.byOld().compact()).add(link.byNew().compact()));
        return json;
    }

    /**
     * Reads what a stranger sent and verifies all of it: two verifications of Ed25519 a key.
     *
     * @throws Malformed for any other form, and where a signature or a succession does not hold
     */
    public static KeyChain parse(ObjectNode json) {
        var array = json.path("links");
        if (json.size() != 2 || !array.isArray()) {
            throw new Malformed(Fault.WRONG_KEY, "a chain of keys has founding and links");
        }
        if (array.size() >= MOST_KEYS) {
            throw new Malformed(Fault.TOO_LARGE, "a chain has at most " + MOST_KEYS + " keys");
        }
        List<Link> links = new ArrayList<>();
        for (var pair : array) {
            if (!pair.isArray() || pair.size() != 2) {
                throw new Malformed(Fault.WRONG_KEY, "a link is told by two: the key before, and the new one");
            }
            links.add(new Link(signed(pair.get(0)), signed(pair.get(1))));
        }
        return new KeyChain(signed(json.path("founding")), links);
    }

    private static Signed signed(JsonNode text) {
        if (!text.isTextual()) {
            throw new Malformed(Fault.WRONG_KEY, "a key is told in a compact signature");
        }
        return Signed.parse(text.textValue(), KeyStatement.MOST_BYTES);
    }

    private void verify() {
        if (links.size() >= MOST_KEYS) {
            throw new Malformed(Fault.TOO_LARGE, "a chain has at most " + MOST_KEYS + " keys");
        }
        Set<String> spent = new HashSet<>();
        var first = KeyStatement.of(founding);
        require(first.number() == 1 && first.by().equals(first.key()), "the first key tells of itself, as number 1");
        require(first.node().equals(first.key().thumbprint()), "a node's id is the thumbprint of its first key");
        add(first, spent, founding, founding);
        for (var link : links) {
            var next = KeyStatement.of(link.byOld());
            require(
                    next.toJson().equals(link.byNew().payload())
                            && link.byNew().type().equals(TYPE),
                    "the old and the new key say the same");
            require(
                    next.node().equals(nodeId()) && next.number() == statements.size() + 1,
                    "a key is of the same node, and numbered on");
            var by = next.by().thumbprint();
            require(
                    next.by().equals(current()) || by.equals(recovery()),
                    "a key follows by the word of the one before, or of the recovery key");
            require(!next.key().thumbprint().equals(recovery()), "a recovery key is for recovery only");
            spent.add(by);
            add(next, spent, link.byOld(), link.byNew());
        }
    }

    private void add(KeyStatement next, Set<String> spent, Signed byOld, Signed byNew) {
        require(spent.add(next.key().thumbprint()), "a key is not used a second time");
        require(!spent.contains(next.recovery()), "a recovery key was never used before");
        if (!byOld.isBy(next.by()) || !byNew.isBy(next.key())) {
            throw new Malformed(
                    Fault.WRONG_SIGNATURE, "key " + next.number() + " of the chain is not signed by whom it names");
        }
        statements.add(next);
    }

    private static void require(boolean holds, String rule) {
        if (!holds) {
            throw new Malformed(Fault.WRONG_KEY, rule);
        }
    }

    private KeyStatement last() {
        return statements.get(statements.size() - 1);
    }

    private boolean isRecovered(int link) {
        return !statements.get(link + 1).by().equals(statements.get(link).key());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof KeyChain that && founding.equals(that.founding) && links.equals(that.links);
    }

    @Override
    public int hashCode() {
        return Objects.hash(founding, links);
    }

    @Override
    public String toString() {
        return "KeyChain[" + nodeId() + ", " + statements.size() + " keys]";
    }
}
