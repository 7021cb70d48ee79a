package org.demebook.protocol;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.UUID;
import java.util.function.BiPredicate;
import org.demebook.merkle.Checkpoint;
import org.demebook.merkle.SignedCheckpoint;
import org.demebook.protocol.Statement.GoneStated;
import org.demebook.signing.KeyChain;
import org.demebook.signing.Malformed;
import org.demebook.signing.Signed;

/** What shows anybody, without trust in who brings it, that a node did what none may do. */
final class Evidence {
    private static final int MOST_PROOF = 64;

    private Evidence() {}

    /** Which journal a head is of, in its first line. */
    static String origin(UUID population, String node) {
        return "demebook/%s/%s".formatted(population, node);
    }

    /** @param proof that the tree of the smaller is a part of the larger one's, as that one's node gave it or its leaves make it */
    static ObjectNode equivocation(
            KeyChain keys, SignedCheckpoint smaller, SignedCheckpoint larger, List<byte[]> proof) {
        var evidence =
                JsonNodeFactory.instance.objectNode().put("one", smaller.text()).put("other", larger.text());
        evidence.set("keys", keys.toJson());
        var hashes = evidence.putArray("proof");
        proof.forEach(hash -> hashes.add(Base64.getEncoder().encodeToString(hash)));
        return evidence;
    }

    /** Of two entries that contradict each other. */
    static ObjectNode twoEntries(KeyChain keys, Signed one, Signed other) {
        var first = one.compact().compareTo(other.compact()) < 0;
        var evidence = JsonNodeFactory.instance
                .objectNode()
                .put("one", first ? one.compact() : other.compact())
                .put("other", first ? other.compact() : one.compact());
        evidence.set("keys", keys.toJson());
        return evidence;
    }

    static ObjectNode forkedKeys(KeyChain one, KeyChain other) {
        var evidence = JsonNodeFactory.instance.objectNode();
        evidence.set("one", one.toJson());
        evidence.set("other", other.toJson());
        return evidence;
    }

    static ObjectNode entry(KeyChain keys, Signed entry) {
        var evidence = JsonNodeFactory.instance.objectNode().put("entry", entry.compact());
        evidence.set("keys", keys.toJson());
        return evidence;
    }

    /** Whether a kind's evidence can be judged by itself, without the journal that it is of. */
    static boolean standsAlone(Alarm.Kind kind) {
        return kind == Alarm.Kind.EQUIVOCATION
                || kind == Alarm.Kind.FORKED_ENTRY
                || kind == Alarm.Kind.TWO_HEIRS
                || kind == Alarm.Kind.FORKED_KEYS;
    }

    /** Whether the evidence shows that the accused did it in this population. Never throws, whatever strangers sent. */
    static boolean holds(Alarm alarm, UUID population) {
        if (alarm.evidence().isEmpty() || !standsAlone(alarm.kind())) {
            return false;
        }
        try {
            var fields = Fields.of(alarm.evidence().get());
            return switch (alarm.kind()) {
                case EQUIVOCATION -> contradict(fields, alarm.accused(), population);
                case FORKED_ENTRY -> twoEntries(fields, alarm.accused(), population, Evidence::isForked);
                case TWO_HEIRS -> twoEntries(fields, alarm.accused(), population, Evidence::isOfTwoHeirs);
                default -> parted(fields, alarm.accused());
            };
        } catch (BadStatement | Malformed | IllegalArgumentException e) {
            return false;
        }
    }

    private static boolean contradict(Fields fields, String accused, UUID population) {
        var keys = StatementForm.keys(fields.object("keys"));
        var one = SignedCheckpoint.parse(fields.text("one"));
        var other = SignedCheckpoint.parse(fields.text("other"));
        var proof = fields.list("proof", MOST_PROOF, item -> Base64.getDecoder().decode(item.asText()));
        return keys.nodeId().equals(accused)
                && isBy(one, accused, keys, population)
                && isBy(other, accused, keys, population)
                && contradict(one.checkpoint(), other.checkpoint(), proof);
    }

    static boolean contradict(Checkpoint smaller, Checkpoint larger, List<byte[]> proof) {
        if (smaller.size() == larger.size()) {
            return !Arrays.equals(smaller.root(), larger.root());
        }
        return smaller.size() < larger.size()
                && Prefix.root(smaller.size(), larger.size(), larger.root(), proof)
                        .map(root -> !Arrays.equals(root, smaller.root()))
                        .orElse(false);
    }

    /** Whether a head is of this node's journal and signed with one of its keys. */
    static boolean isBy(SignedCheckpoint head, String node, KeyChain keys, UUID population) {
        return head.checkpoint().origin().equals(origin(population, node))
                && keys.keys().stream().anyMatch(key -> head.isBy(node, key));
    }

    private static boolean twoEntries(
            Fields fields, String accused, UUID population, BiPredicate<Entry, Entry> contradict) {
        var keys = StatementForm.keys(fields.object("keys"));
        var one = Signed.parse(fields.text("one"), Entry.MOST_CHARACTERS);
        var other = Signed.parse(fields.text("other"), Entry.MOST_CHARACTERS);
        return keys.nodeId().equals(accused) && twoEntries(keys, one, other, population, contradict);
    }

    /** Two entries with one number, by one key: with two, one of them may be of a thief. */
    static boolean forked(KeyChain keys, Signed one, Signed other, UUID population) {
        return twoEntries(keys, one, other, population, Evidence::isForked);
    }

    private static boolean isForked(Entry one, Entry other) {
        return one.seq() == other.seq();
    }

    /** Two entries that name different heirs of one gone node, by one key. */
    static boolean ofTwoHeirs(KeyChain keys, Signed one, Signed other, UUID population) {
        return twoEntries(keys, one, other, population, Evidence::isOfTwoHeirs);
    }

    private static boolean isOfTwoHeirs(Entry one, Entry other) {
        return one.says() instanceof GoneStated first
                && other.says() instanceof GoneStated second
                && first.gone().equals(second.gone())
                && !first.heir().equals(second.heir());
    }

    private static boolean twoEntries(
            KeyChain keys, Signed one, Signed other, UUID population, BiPredicate<Entry, Entry> contradict) {
        if (one.equals(other) || !one.keyId().equals(other.keyId())) {
            return false;
        }
        var first = Entry.read(one);
        var second = Entry.read(other);
        return contradict.test(first, second)
                && first.population().equals(population)
                && second.population().equals(population)
                && first.node().equals(keys.nodeId())
                && second.node().equals(keys.nodeId())
                && keys.key(one.keyId())
                        .map(key -> one.isBy(key) && other.isBy(key))
                        .orElse(false);
    }

    private static boolean parted(Fields fields, String accused) {
        var one = StatementForm.keys(fields.object("one"));
        var other = StatementForm.keys(fields.object("other"));
        return one.nodeId().equals(accused) && other.nodeId().equals(accused) && parted(one, other);
    }

    static boolean parted(KeyChain one, KeyChain other) {
        return !one.extendsChain(other) && !other.extendsChain(one) && !one.overrules(other) && !other.overrules(one);
    }
}
