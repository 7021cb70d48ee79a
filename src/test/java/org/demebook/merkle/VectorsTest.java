package org.demebook.merkle;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import org.demebook.Vectors;
import org.demebook.signing.CanonicalJson;
import org.demebook.signing.Malformed;
import org.demebook.signing.Signed;
import org.demebook.signing.SigningKey;
import org.demebook.signing.VerifyingKey;
import org.junit.jupiter.api.Test;

/** The published vectors, reproduced; trees are judged by the RFC's definitions ({@link Rfc6962}). */
class VectorsTest {
    private static final HexFormat HEX = HexFormat.of();
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    @Test
    void entry() {
        var made = NODES.objectNode();
        var key = key(made.putObject("key"), 7);
        var payload = NODES.objectNode().put("population", "MC").put("seq", 1).put("at", "2026-06-29T08:00:00Z");
        payload.putObject("fact").put("type", "AnimalNamed").put("name", "Wren \u2013 la p\u00e9tite");
        var signed = Signed.sign("demebook-entry", payload, key);
        byte[] salt = Hashes.sha256("a salt is random; this one is not".getBytes(UTF_8), new byte[0]);
        byte[] digest = MerkleTree.digestOf(salt, signed.compact().getBytes(UTF_8));
        made.put("type", signed.type())
                .put("header", decoded(signed.compact(), 0))
                .put("payload", decoded(signed.compact(), 1))
                .put("compact", signed.compact())
                .put("salt", HEX.formatHex(salt))
                .put("digest", HEX.formatHex(digest))
                .put("leaf", HEX.formatHex(MerkleTree.leafOf(false, digest)))
                .put("leafOfRestricted", HEX.formatHex(MerkleTree.leafOf(true, digest)));
        var parts = signed.compact().split("\\.");
        var refused = made.putArray("refused");
        refuseEntry(
                refused,
                "another order in the header",
                encoded("{\"kid\":\"" + signed.keyId() + "\",\"alg\":\"Ed25519\",\"typ\":\"demebook-entry\"}") + "."
                        + parts[1] + "." + parts[2]);
        refuseEntry(
                refused,
                "the older name of the algorithm",
                encoded("{\"alg\":\"EdDSA\",\"kid\":\"" + signed.keyId() + "\",\"typ\":\"demebook-entry\"}") + "."
                        + parts[1] + "." + parts[2]);
        refuseEntry(refused, "a payload with a space", parts[0] + "." + encoded("{\"seq\": 1}") + "." + parts[2]);
        refuseEntry(refused, "padding", parts[0] + "." + parts[1] + "." + parts[2] + "==");
        refuseEntry(
                refused,
                "stray bits",
                parts[0] + "." + parts[1] + "." + parts[2].substring(0, 85) + (char) (parts[2].charAt(85) + 1));
        refuseEntry(refused, "two parts", parts[0] + "." + parts[1]);
        refuseEntry(refused, "a signature of 63 bytes", parts[0] + "." + parts[1] + "." + parts[2].substring(0, 84));

        var published = Vectors.reproduced("entry", made);
        var read = Signed.parse(published.get("compact").asText(), 10_000);
        assertThat(read.isBy(new VerifyingKey(published.get("key").get("x").asText())))
                .isTrue();
        assertThat(new String(CanonicalJson.write(read.payload()), UTF_8))
                .isEqualTo(published.get("payload").asText());
        for (var one : published.get("refused")) {
            assertThat(entryFault(one.get("compact").asText()))
                    .isEqualTo(one.get("fault").asText());
        }
    }

    private static void refuseEntry(ArrayNode refused, String what, String compact) {
        refused.addObject().put("what", what).put("fault", entryFault(compact)).put("compact", compact);
    }

    private static String entryFault(String compact) {
        try {
            Signed.parse(compact, 10_000);
        } catch (Malformed e) {
            return e.fault().name();
        }
        throw new AssertionError("taken: " + compact);
    }

    @Test
    void merkle() {
        var made = NODES.objectNode();
        var tree = new MerkleTree();
        var leaves = made.putArray("leaves");
        for (int i = 0; i < 11; i++) {
            tree.append(Hashes.leaf(new byte[] {(byte) i}));
            leaves.add(HEX.formatHex(tree.leaf(i)));
        }
        var roots = made.putArray("roots");
        for (int size = 0; size <= 11; size++) {
            roots.add(HEX.formatHex(tree.root(size)));
        }
        var inclusion = made.putArray("inclusion");
        for (int[] one : new int[][] {{0, 1}, {0, 11}, {5, 11}, {10, 11}, {6, 7}, {3, 8}}) {
            proof(inclusion.addObject().put("index", one[0]).put("size", one[1]), tree.inclusion(one[0], one[1]));
        }
        var consistency = made.putArray("consistency");
        for (int[] one : new int[][] {{0, 11}, {11, 11}, {1, 11}, {4, 11}, {6, 11}, {7, 8}, {10, 11}}) {
            proof(consistency.addObject().put("from", one[0]).put("to", one[1]), tree.consistency(one[0], one[1]));
        }

        var published = Vectors.reproduced("merkle", made);
        var all = hashes(published.get("leaves"));
        for (int size = 0; size <= 11; size++) {
            assertThat(hashes(published.get("roots")).get(size)).isEqualTo(Rfc6962.root(all.subList(0, size)));
        }
        for (var one : published.get("inclusion")) {
            int index = one.get("index").asInt();
            int size = one.get("size").asInt();
            assertThat(hashes(one.get("proof")))
                    .usingElementComparator(Arrays::compare)
                    .isEqualTo(Rfc6962.path(index, all.subList(0, size)));
        }
        for (var one : published.get("consistency")) {
            int to = one.get("to").asInt();
            assertThat(hashes(one.get("proof")))
                    .usingElementComparator(Arrays::compare)
                    .isEqualTo(Rfc6962.proof(one.get("from").asInt(), all.subList(0, to)));
        }
    }

    private static void proof(ObjectNode to, List<byte[]> proof) {
        var array = to.putArray("proof");
        proof.forEach(hash -> array.add(HEX.formatHex(hash)));
    }

    private static List<byte[]> hashes(JsonNode array) {
        List<byte[]> hashes = new ArrayList<>();
        array.forEach(hash -> hashes.add(HEX.parseHex(hash.asText())));
        return hashes;
    }

    @Test
    void checkpoint() {
        var made = NODES.objectNode();
        var harbour = key(made.putObject("harbour"), 8);
        var upland = key(made.putObject("upland"), 9);
        var at = Instant.parse("2026-06-29T08:00:00Z");
        var name = harbour.verifyingKey().thumbprint();
        var head = new Checkpoint(name + "/MC", 1, Hashes.leaf(new byte[] {0}));
        var signed = SignedCheckpoint.sign(head, name, harbour);
        var cosigned = signed.cosigned(upland.verifyingKey().thumbprint(), at, upland);
        made.put("origin", head.origin())
                .put("size", head.size())
                .put("root", HEX.formatHex(head.root()))
                .put("signed", signed.text())
                .put("cosignedAtUnixTime", at.getEpochSecond())
                .put("cosigned", cosigned.text());
        var refused = made.putArray("refused");
        refuseCheckpoint(refused, "a size that starts with 0", signed.text().replace("\n1\n", "\n01\n"));
        refuseCheckpoint(refused, "an extension line", signed.text().replace("\n\n", "\nmore\n\n"));
        refuseCheckpoint(refused, "no signature", head.body() + "\n");
        refuseCheckpoint(refused, "a hyphen for the dash", signed.text().replace('\u2014', '-'));
        refuseCheckpoint(
                refused, "one cosigner twice", cosigned.text() + cosigned.text().split("(?=\u2014)")[2]);
        refuseCheckpoint(refused, "something after the last line", signed.text() + "\n");
        refuseCheckpoint(
                refused,
                "a root of no entries that is not the hash of nothing",
                signed.text().replace("\n1\n", "\n0\n"));

        var published = Vectors.reproduced("checkpoint", made);
        var read = SignedCheckpoint.parse(published.get("cosigned").asText(), 10_000);
        assertThat(read.isBy(
                        name, new VerifyingKey(published.get("harbour").get("x").asText())))
                .isTrue();
        assertThat(read.cosignedAt(
                        published.get("upland").get("thumbprint").asText(),
                        new VerifyingKey(published.get("upland").get("x").asText())))
                .contains(at);
        for (var one : published.get("refused")) {
            assertThat(checkpointFault(one.get("text").asText()))
                    .isEqualTo(one.get("fault").asText());
        }
    }

    private static void refuseCheckpoint(ArrayNode refused, String what, String text) {
        refused.addObject()
                .put("what", what)
                .put("fault", checkpointFault(text))
                .put("text", text);
    }

    private static String checkpointFault(String text) {
        try {
            SignedCheckpoint.parse(text, 10_000);
        } catch (Malformed e) {
            return e.fault().name();
        }
        throw new AssertionError("taken: " + text);
    }

    private static SigningKey key(ObjectNode to, int filling) {
        byte[] seed = new byte[32];
        Arrays.fill(seed, (byte) filling);
        var key = SigningKey.ofSeed(seed);
        to.put("seed", HEX.formatHex(seed))
                .put("x", key.verifyingKey().x())
                .put("thumbprint", key.verifyingKey().thumbprint());
        return key;
    }

    private static String decoded(String compact, int part) {
        return new String(Base64.getUrlDecoder().decode(compact.split("\\.")[part]), UTF_8);
    }

    private static String encoded(String text) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(text.getBytes(UTF_8));
    }
}
