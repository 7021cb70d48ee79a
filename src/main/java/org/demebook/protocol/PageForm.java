package org.demebook.protocol;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.demebook.merkle.SignedCheckpoint;
import org.demebook.signing.CanonicalJson;
import org.demebook.signing.KeyChain;
import org.demebook.signing.Malformed;

/** Pages as bytes: canonical JSON, hashes and salts in base64. Its members stand in docs/federation/feed.md. */
public final class PageForm {
    /** A page is never larger. */
    public static final int MOST_BYTES = 4 * 1024 * 1024;

    private static final int HASH_BYTES = 32;
    private static final int MOST_PROOF = 64;
    private static final int MOST_HEADS = 64;
    private static final int MOST_ALARMS = 16;

    private PageForm() {}

    public static byte[] write(FeedPage page) {
        var out = JsonNodeFactory.instance
                .objectNode()
                .put("node", page.node())
                .put("after", page.after())
                .put("head", page.head().text())
                .put("highest", page.highest());
        out.set("keys", page.keys().toJson());
        var items = out.putArray("items");
        for (var item : page.items()) {
            var one = items.addObject();
            item.entry().ifPresent(entry -> one.put("entry", entry));
            item.salt().ifPresent(salt -> one.put("salt", base64(salt)));
            item.digest().ifPresent(digest -> one.put("digest", base64(digest)));
        }
        write(out.putArray("fromStart"), page.fromStart());
        write(out.putArray("fromEnd"), page.fromEnd());
        var heads = out.putArray("heads");
        for (var head : page.heads()) {
            heads.addObject()
                    .put("node", head.node())
                    .put("head", head.head().text())
                    .set("keys", head.keys().toJson());
        }
        var alarms = out.putArray("alarms");
        page.alarms().forEach(alarm -> alarms.add(write(alarm)));
        return CanonicalJson.write(out);
    }

    private static String base64(byte[] bytes) {
        return Base64.getEncoder().encodeToString(bytes);
    }

    private static void write(ArrayNode out, List<byte[]> hashes) {
        hashes.forEach(hash -> out.add(base64(hash)));
    }

    /** An alarm as it is passed on and kept as evidence. */
    public static ObjectNode write(Alarm alarm) {
        var out = JsonNodeFactory.instance
                .objectNode()
                .put("id", alarm.id())
                .put("kind", alarm.kind().name())
                .put("accused", alarm.accused())
                .put("sentence", alarm.sentence())
                .put("noticed", alarm.noticedAt().toString());
        alarm.evidence().ifPresent(evidence -> out.set("evidence", evidence));
        return out;
    }

    /** @throws Malformed for any form but the accepted one; signatures and proofs are not looked at */
    public static FeedPage read(byte[] bytes) {
        return read(bytes, new HashMap<>());
    }

    /**
     * The same, where many pages are read: most of the cost of a small one is to verify the chains of keys that it holds, two
     * verifications of Ed25519 a key.
     *
     * @param verified chains of earlier pages, which are not verified again; those of this page come in
     * @throws Malformed as above
     */
    public static FeedPage read(byte[] bytes, Map<ObjectNode, KeyChain> verified) {
        var object = CanonicalJson.read(bytes, MOST_BYTES);
        try {
            return page(Fields.of(object), verified);
        } catch (BadStatement e) {
            throw new Malformed(Malformed.Fault.NOT_JSON, "The page " + e.getMessage());
        }
    }

    private static FeedPage page(Fields fields, Map<ObjectNode, KeyChain> chains) {
        var page = new FeedPage(
                fields.nodeId("node"),
                fields.number("after", 0, CanonicalJson.MOST_NUMBER),
                keys(fields.object("keys"), chains),
                SignedCheckpoint.parse(fields.text("head")),
                fields.list("items", Giving.MOST_ENTRIES, PageForm::item),
                fields.list("fromStart", MOST_PROOF, PageForm::hash),
                fields.list("fromEnd", MOST_PROOF, PageForm::hash),
                fields.list("heads", MOST_HEADS, item -> head(Fields.of(item), chains)),
                fields.number("highest", 0, CanonicalJson.MOST_NUMBER),
                fields.list("alarms", MOST_ALARMS, item -> alarm(Fields.of(item))));
        fields.end();
        return page;
    }

    /** A chain is verified once, however often a page holds it. */
    private static KeyChain keys(ObjectNode object, Map<ObjectNode, KeyChain> chains) {
        return chains.computeIfAbsent(object, KeyChain::parse);
    }

    private static FeedPage.Item item(JsonNode node) {
        var fields = Fields.of(node);
        var entry = fields.optionalText("entry");
        var salt = fields.optionalText("salt").map(PageForm::bytes);
        var digest = fields.optionalText("digest").map(PageForm::bytes);
        fields.end();
        if (entry.isPresent() != salt.isPresent() || entry.isPresent() == digest.isPresent()) {
            throw new BadStatement("has an item that is neither an entry with its salt nor a digest");
        }
        if (digest.isPresent() && digest.get().length != HASH_BYTES) {
            throw new BadStatement("has a digest that is no SHA-256");
        }
        return new FeedPage.Item(entry, salt, digest);
    }

    private static byte[] hash(JsonNode node) {
        var hash = bytes(node.asText());
        if (hash.length != HASH_BYTES) {
            throw new BadStatement("has a hash that is no SHA-256");
        }
        return hash;
    }

    private static byte[] bytes(String text) {
        try {
            var bytes = Base64.getDecoder().decode(text);
            if (base64(bytes).equals(text)) {
                return bytes;
            }
        } catch (IllegalArgumentException e) {
            // said below
        }
        throw new BadStatement("has what is no base64");
    }

    private static FeedPage.NodeHead head(Fields fields, Map<ObjectNode, KeyChain> chains) {
        var head = new FeedPage.NodeHead(
                fields.nodeId("node"),
                keys(fields.object("keys"), chains),
                SignedCheckpoint.parse(fields.text("head")));
        fields.end();
        return head;
    }

    private static Alarm alarm(Fields fields) {
        var kind = kind(fields.text("kind"));
        var alarm = new Alarm(
                fields.text("id"),
                kind,
                fields.nodeId("accused"),
                Optional.of(fields.object("evidence")),
                fields.text("sentence"),
                Entry.instant(fields.text("noticed")));
        fields.end();
        return alarm;
    }

    private static Alarm.Kind kind(String name) {
        for (var kind : Alarm.Kind.values()) {
            if (kind.name().equals(name)) {
                return kind;
            }
        }
        throw new BadStatement("has no kind of alarm but " + name);
    }
}
