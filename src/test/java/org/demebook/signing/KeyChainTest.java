package org.demebook.signing;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.function.Consumer;
import org.demebook.signing.Malformed.Fault;
import org.junit.jupiter.api.Test;

class KeyChainTest {
    private static final SigningKey FIRST = key("first");
    private static final SigningKey SECOND = key("second");
    private static final SigningKey THIRD = key("third");
    private static final SigningKey SAFE = key("in the safe");
    private static final SigningKey SAFE_AFTER = key("in the safe afterwards");
    private static final SigningKey THIEF = key("thief");

    private static final KeyChain HARBOUR = KeyChain.of(FIRST, SAFE.verifyingKey());

    @Test
    void a_node_is_called_by_its_first_key_for_ever() {
        var later =
                HARBOUR.rotated(FIRST, SECOND, SAFE.verifyingKey()).recovered(SAFE, THIRD, SAFE_AFTER.verifyingKey());
        assertThat(later.nodeId())
                .isEqualTo(HARBOUR.nodeId())
                .isEqualTo(FIRST.verifyingKey().thumbprint());
        assertThat(later.first()).isEqualTo(FIRST.verifyingKey());
        assertThat(later.current()).isEqualTo(THIRD.verifyingKey());
        assertThat(later.recovery()).isEqualTo(SAFE_AFTER.verifyingKey().thumbprint());
        assertThat(later.keys()).containsExactly(FIRST.verifyingKey(), SECOND.verifyingKey(), THIRD.verifyingKey());
        assertThat(later.key(SECOND.verifyingKey().thumbprint())).contains(SECOND.verifyingKey());
        assertThat(later.key(FIRST.verifyingKey().thumbprint())).contains(FIRST.verifyingKey());
        assertThat(later.key(SAFE.verifyingKey().thumbprint())).isEmpty();
    }

    @Test
    void a_chain_is_read_back_as_it_was_written() {
        var chain =
                HARBOUR.rotated(FIRST, SECOND, SAFE.verifyingKey()).recovered(SAFE, THIRD, SAFE_AFTER.verifyingKey());
        byte[] written = CanonicalJson.write(chain.toJson());
        var read = KeyChain.parse(CanonicalJson.read(written, 10_000));
        assertThat(read)
                .isEqualTo(chain)
                .hasSameHashCodeAs(chain)
                .hasToString("KeyChain[" + chain.nodeId() + ", 3 keys]");
        assertThat(CanonicalJson.write(read.toJson())).isEqualTo(written);
    }

    @Test
    void a_longer_chain_extends_a_shorter_one_and_itself() {
        var second = HARBOUR.rotated(FIRST, SECOND, SAFE.verifyingKey());
        var third = second.rotated(SECOND, THIRD, SAFE_AFTER.verifyingKey());
        assertThat(third.extendsChain(HARBOUR)).isTrue();
        assertThat(third.extendsChain(second)).isTrue();
        assertThat(third.extendsChain(third)).isTrue();
        assertThat(second.extendsChain(third)).isFalse();
        assertThat(second.extendsChain(HARBOUR.rotated(FIRST, THIRD, SAFE.verifyingKey())))
                .isFalse();
        assertThat(second.extendsChain(KeyChain.of(THIEF, SAFE.verifyingKey()))).isFalse();
        assertThat(second.overrules(third)).isFalse();
        assertThat(third.overrules(second)).isFalse();
    }

    @Test
    void who_stole_the_key_in_use_is_overruled_by_the_recovery_key() {
        var stolen = HARBOUR.rotated(FIRST, THIEF, key("safe of the thief").verifyingKey())
                .rotated(
                        THIEF,
                        key("another of the thief"),
                        key("safe of the thief").verifyingKey());
        var recovered = HARBOUR.recovered(SAFE, SECOND, SAFE_AFTER.verifyingKey());
        assertThat(recovered.overrules(stolen)).isTrue();
        assertThat(stolen.overrules(recovered)).isFalse();
    }

    @Test
    void two_successions_of_one_kind_are_a_contradiction_and_overrule_nothing() {
        var one = HARBOUR.rotated(FIRST, SECOND, SAFE.verifyingKey());
        var other = HARBOUR.rotated(FIRST, THIRD, SAFE.verifyingKey());
        assertThat(one.overrules(other) || other.overrules(one)).isFalse();
        var again = HARBOUR.recovered(SAFE, SECOND, SAFE_AFTER.verifyingKey());
        var elsewhere = HARBOUR.recovered(SAFE, THIRD, SAFE_AFTER.verifyingKey());
        assertThat(again.overrules(elsewhere) || elsewhere.overrules(again)).isFalse();
        var anotherNode = KeyChain.of(THIEF, SAFE.verifyingKey());
        assertThat(again.overrules(anotherNode) || anotherNode.overrules(again)).isFalse();
    }

    @Test
    void only_the_key_in_use_rotates_and_only_the_recovery_key_recovers() {
        refused(() -> HARBOUR.rotated(SECOND, THIRD, SAFE.verifyingKey()));
        refused(() -> HARBOUR.rotated(SAFE, THIRD, SAFE.verifyingKey()));
        refused(() -> HARBOUR.recovered(FIRST, THIRD, SAFE_AFTER.verifyingKey()));
        refused(() -> HARBOUR.recovered(THIEF, THIRD, SAFE_AFTER.verifyingKey()));
    }

    @Test
    void a_key_that_was_used_does_not_come_back() {
        var second = HARBOUR.rotated(FIRST, SECOND, SAFE.verifyingKey());
        refused(() -> second.rotated(SECOND, FIRST, SAFE.verifyingKey()));
        refused(() -> second.rotated(SECOND, SECOND, SAFE.verifyingKey()));
        refused(() -> second.rotated(SECOND, SAFE, SAFE_AFTER.verifyingKey()));
        refused(() -> second.rotated(SECOND, THIRD, FIRST.verifyingKey()));
        refused(() -> second.rotated(SECOND, THIRD, THIRD.verifyingKey()));
        refused(() -> second.recovered(SAFE, THIRD, SAFE.verifyingKey()));
        refused(() -> second.recovered(SAFE, SAFE, SAFE_AFTER.verifyingKey()));
        var recovered = second.recovered(SAFE, THIRD, SAFE_AFTER.verifyingKey());
        refused(() -> recovered.rotated(THIRD, key("fourth"), SAFE.verifyingKey()));
        refused(() -> recovered.rotated(THIRD, SAFE, SAFE_AFTER.verifyingKey()));
        refused(() -> KeyChain.of(FIRST, FIRST.verifyingKey()));
    }

    @Test
    void a_recovery_key_that_the_first_key_did_not_name_is_refused() {
        var foreign = statement(1, THIEF, SAFE_AFTER, THIEF).put("node", HARBOUR.nodeId());
        malformed(
                Fault.WRONG_KEY,
                json -> json.put(
                        "founding", Signed.sign(KeyChain.TYPE, foreign, THIEF).compact()));
        var renamed = statement(1, FIRST, SAFE_AFTER, FIRST);
        malformed(Fault.WRONG_SIGNATURE, json -> json.put("founding", forged(renamed, FIRST, THIEF)));
    }

    @Test
    void a_succession_that_does_not_hold_is_refused() {
        link(Fault.WRONG_KEY, statement(2, SECOND, SAFE, THIEF), THIEF, SECOND);
        link(Fault.WRONG_KEY, statement(3, SECOND, SAFE, FIRST), FIRST, SECOND);
        link(Fault.WRONG_KEY, statement(1, SECOND, SAFE, FIRST), FIRST, SECOND);
        link(Fault.WRONG_KEY, statement(2, SECOND, SAFE, SECOND), SECOND, SECOND);
        link(
                Fault.WRONG_KEY,
                statement(2, SECOND, SAFE, FIRST)
                        .put("node", THIEF.verifyingKey().thumbprint()),
                FIRST,
                SECOND);
        link(Fault.WRONG_KEY, statement(2, SECOND, SAFE, FIRST).put("more", 1), FIRST, SECOND);
        link(Fault.WRONG_KEY, statement(2, SECOND, SAFE, FIRST).put("number", "2"), FIRST, SECOND);
        link(Fault.WRONG_KEY, statement(2, SECOND, SAFE, FIRST).put("recovery", "in the safe"), FIRST, SECOND);
        link(Fault.WRONG_SIGNATURE, statement(2, SECOND, SAFE, FIRST), THIEF, SECOND);
        link(Fault.WRONG_SIGNATURE, statement(2, SECOND, SAFE, FIRST), FIRST, THIEF);
        var fine = statement(2, SECOND, SAFE, FIRST);
        KeyChain.parse(with(Signed.sign(KeyChain.TYPE, fine, FIRST), Signed.sign(KeyChain.TYPE, fine, SECOND)));
        pair(
                Fault.WRONG_KEY,
                Signed.sign(KeyChain.TYPE, fine, FIRST),
                Signed.sign(KeyChain.TYPE, statement(2, SECOND, SAFE_AFTER, FIRST), SECOND));
        pair(Fault.WRONG_KEY, Signed.sign("demebook-entry", fine, FIRST), Signed.sign(KeyChain.TYPE, fine, SECOND));
        pair(Fault.WRONG_KEY, Signed.sign(KeyChain.TYPE, fine, FIRST), Signed.sign("demebook-entry", fine, SECOND));
    }

    @Test
    void another_form_is_refused() {
        malformed(Fault.WRONG_KEY, json -> json.remove("links"));
        malformed(Fault.WRONG_KEY, json -> json.remove("founding"));
        malformed(Fault.WRONG_KEY, json -> json.put("more", 1));
        malformed(Fault.WRONG_KEY, json -> json.put("founding", 1));
        malformed(Fault.WRONG_KEY, json -> ((ArrayNode) json.get("links")).add("x"));
        malformed(
                Fault.WRONG_KEY,
                json -> ((ArrayNode) json.get("links")).addArray().add("x"));
        malformed(
                Fault.WRONG_HEADER,
                json -> ((ArrayNode) json.get("links")).addArray().add("x").add("y"));
        malformed(Fault.TOO_LARGE, json -> json.put("founding", "x".repeat(2_000)));
        malformed(Fault.TOO_LARGE, json -> {
            for (int i = 0; i < KeyChain.MOST_KEYS; i++) {
                ((ArrayNode) json.get("links")).add(1);
            }
        });
    }

    private static void refused(Runnable succession) {
        assertThatThrownBy(succession::run).isInstanceOf(IllegalArgumentException.class);
    }

    private static void malformed(Fault fault, Consumer<ObjectNode> change) {
        var json = HARBOUR.toJson();
        change.accept(json);
        assertThatThrownBy(() -> KeyChain.parse(json))
                .isInstanceOfSatisfying(
                        Malformed.class, e -> assertThat(e.fault()).isEqualTo(fault));
    }

    private static void link(Fault fault, ObjectNode statement, SigningKey old, SigningKey next) {
        pair(
                fault,
                Signed.parse(forged(statement, named(statement, "by"), old), 2_000),
                Signed.parse(forged(statement, named(statement, "key"), next), 2_000));
    }

    private static SigningKey named(ObjectNode statement, String field) {
        for (var key : new SigningKey[] {FIRST, SECOND, THIRD, THIEF}) {
            if (key.verifyingKey().x().equals(statement.get(field).asText())) {
                return key;
            }
        }
        throw new AssertionError(statement);
    }

    private static void pair(Fault fault, Signed byOld, Signed byNew) {
        assertThatThrownBy(() -> KeyChain.parse(with(byOld, byNew)))
                .isInstanceOfSatisfying(
                        Malformed.class, e -> assertThat(e.fault()).isEqualTo(fault));
    }

    private static ObjectNode with(Signed byOld, Signed byNew) {
        var json = HARBOUR.toJson();
        ((ArrayNode) json.get("links")).addArray().add(byOld.compact()).add(byNew.compact());
        return json;
    }

    /** What claims to be by one key and is signed by another. */
    private static String forged(ObjectNode statement, SigningKey claimed, SigningKey by) {
        var honest = Signed.sign(KeyChain.TYPE, statement, claimed).compact();
        var input = honest.substring(0, honest.lastIndexOf('.'));
        return input + "." + Base64Url.encode(by.sign(input.getBytes(UTF_8)));
    }

    private static ObjectNode statement(int number, SigningKey key, SigningKey recovery, SigningKey by) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("node", HARBOUR.nodeId())
                .put("number", number)
                .put("key", key.verifyingKey().x())
                .put("recovery", recovery.verifyingKey().thumbprint())
                .put("by", by.verifyingKey().x());
    }

    private static SigningKey key(String name) {
        return SigningKey.ofSeed(Digests.sha256(name.getBytes(UTF_8)));
    }
}
