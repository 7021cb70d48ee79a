package org.demebook.signing;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.security.GeneralSecurityException;
import java.util.Base64;
import org.demebook.signing.Malformed.Fault;
import org.jose4j.jwa.AlgorithmConstraints;
import org.jose4j.jws.JsonWebSignature;
import org.jose4j.lang.JoseException;
import org.junit.jupiter.api.Test;

/** The second opinion on RFC 7515 is jose4j. */
class SignedTest {
    private static final int MOST = 10_000;
    private static final SigningKey KEY = SigningKey.ofSeed("the first key of the harbour ...".getBytes(UTF_8));
    private static final String TYPE = "demebook-entry";

    @Test
    void what_was_signed_is_read_back_and_known_to_be_by_its_key() {
        var signed = Signed.sign(TYPE, wren(), KEY);
        var read = Signed.parse(signed.compact(), MOST);
        assertThat(read).isEqualTo(signed).hasSameHashCodeAs(signed).hasToString(signed.compact());
        assertThat(read.type()).isEqualTo(TYPE);
        assertThat(read.keyId()).isEqualTo(KEY.verifyingKey().thumbprint());
        assertThat(read.payload()).isEqualTo(wren()).isEqualTo(signed.payload());
        assertThat(read.isBy(KEY.verifyingKey())).isTrue();
        assertThat(read.isBy(SigningKey.generate().verifyingKey())).isFalse();
    }

    @Test
    void another_library_reads_the_same_and_signs_the_same() throws JoseException, GeneralSecurityException {
        var signed = Signed.sign(TYPE, wren(), KEY);
        var read = new JsonWebSignature();
        read.setCompactSerialization(signed.compact());
        assertThat(read.getHeaders().getFullHeaderAsJsonString())
                .isEqualTo("{\"alg\":\"Ed25519\",\"kid\":\""
                        + KEY.verifyingKey().thumbprint() + "\",\"typ\":\"demebook-entry\"}");
        assertThat(read.getUnverifiedPayload()).isEqualTo(new String(CanonicalJson.write(wren()), UTF_8));
        // it knows the algorithm by its older name alone (RFC 8037, before RFC 9864): the same signature over that
        // header
        var theirs = new JsonWebSignature();
        theirs.setAlgorithmConstraints(AlgorithmConstraints.NO_CONSTRAINTS);
        theirs.setAlgorithmHeaderValue("EdDSA");
        theirs.setPayload("Example of Ed25519 signing");
        theirs.setKey(Jdk.privateKey(KEY.seed()));
        var compact = theirs.getCompactSerialization();
        int dot = compact.lastIndexOf('.');
        assertThat(Base64.getUrlEncoder()
                        .withoutPadding()
                        .encodeToString(KEY.sign(compact.substring(0, dot).getBytes(UTF_8))))
                .isEqualTo(compact.substring(dot + 1));
    }

    @Test
    void a_payload_given_or_handed_out_may_change_without_changing_what_was_signed() {
        var payload = wren();
        var signed = Signed.sign(TYPE, payload, KEY);
        payload.put("name", "Ines");
        signed.payload().put("name", "Dov");
        assertThat(signed.payload()).isEqualTo(wren());
    }

    @Test
    void a_header_has_one_form() {
        var kid = KEY.verifyingKey().thumbprint();
        for (var header : new String[] {
            "{\"alg\":\"EdDSA\"}", // RFC 8037, A.4
            "{\"alg\":\"none\",\"kid\":\"" + kid + "\",\"typ\":\"demebook-entry\"}",
            "{\"alg\":\"EdDSA\",\"kid\":\"" + kid + "\",\"typ\":\"demebook-entry\"}",
            "{\"alg\":\"Ed25519\",\"kid\":\"" + kid + "\"}",
            "{\"alg\":\"Ed25519\",\"crit\":[],\"kid\":\"" + kid + "\",\"typ\":\"demebook-entry\"}",
            "{\"alg\":\"Ed25519\",\"jku\":\"https://x.example\",\"kid\":\"" + kid + "\"}",
            "{\"alg\":\"Ed25519\",\"kid\":\"harbour\",\"typ\":\"demebook-entry\"}",
            "{\"alg\":\"Ed25519\",\"kid\":1,\"typ\":\"demebook-entry\"}",
            "{\"alg\":\"Ed25519\",\"kid\":\"" + kid + "\",\"typ\":\"Entry\"}",
            "{\"alg\":\"Ed25519\",\"kid\":\"" + kid + "\",\"typ\":\"\"}",
            "{\"alg\":\"Ed25519\",\"kid\":\"" + kid + "\",\"typ\":true}"
        }) {
            refused(Fault.WRONG_HEADER, signed(header, "{}"));
        }
        refused(
                Fault.NOT_CANONICAL,
                signed("{\"typ\":\"demebook-entry\",\"kid\":\"" + kid + "\",\"alg\":\"Ed25519\"}", "{}"));
        refused(Fault.DUPLICATE_NAME, signed("{\"alg\":\"none\",\"alg\":\"Ed25519\",\"kid\":\"" + kid + "\"}", "{}"));
        refused(Fault.TOO_LARGE, signed("{\"alg\":\"" + "x".repeat(200) + "\"}", "{}"));
    }

    @Test
    void a_payload_has_one_form() {
        var header =
                "{\"alg\":\"Ed25519\",\"kid\":\"" + KEY.verifyingKey().thumbprint() + "\",\"typ\":\"demebook-entry\"}";
        assertThat(Signed.parse(signed(header, "{\"a\":1}"), MOST).isBy(KEY.verifyingKey()))
                .isTrue();
        refused(Fault.NOT_CANONICAL, signed(header, "{\"a\": 1}"));
        refused(Fault.UNSAFE_NUMBER, signed(header, "{\"a\":1.5}"));
        refused(Fault.NOT_JSON, signed(header, "Example of Ed25519 signing"));
        refused(Fault.NOT_JSON, signed(header, ""));
    }

    @Test
    void the_text_has_one_form() {
        var compact = Signed.sign(TYPE, wren(), KEY).compact();
        var parts = compact.split("\\.");
        refused(Fault.WRONG_HEADER, "");
        refused(Fault.WRONG_HEADER, parts[0] + "." + parts[1]);
        refused(Fault.WRONG_HEADER, compact + ".");
        refused(Fault.NOT_BASE64URL, compact + "=");
        refused(Fault.NOT_BASE64URL, compact + "\n");
        refused(Fault.NOT_BASE64URL, " " + compact);
        refused(Fault.NOT_BASE64URL, compact.substring(0, compact.length() - 1) + "é");
        refused(Fault.WRONG_SIGNATURE, parts[0] + "." + parts[1] + "." + parts[2].substring(0, 84));
        refused(Fault.WRONG_SIGNATURE, parts[0] + "." + parts[1] + ".");
        // the last character of 64 bytes holds two bits; the other four are zero in the accepted form (RFC 4648, 3.5)
        char last = compact.charAt(compact.length() - 1);
        refused(Fault.NOT_BASE64URL, compact.substring(0, compact.length() - 1) + (char) (last + 1));
        assertThatThrownBy(() -> Signed.parse(compact, compact.length() - 1))
                .isInstanceOfSatisfying(
                        Malformed.class, e -> assertThat(e.fault()).isEqualTo(Fault.TOO_LARGE));
    }

    @Test
    void whatever_character_is_changed_it_is_no_longer_by_its_key() {
        var compact = Signed.sign(TYPE, wren(), KEY).compact();
        for (int at = 0; at < compact.length(); at++) {
            for (char other : new char[] {'A', 'b', '-', '.', '='}) {
                if (compact.charAt(at) != other) {
                    var changed = compact.substring(0, at) + other + compact.substring(at + 1);
                    try {
                        assertThat(Signed.parse(changed, MOST).isBy(KEY.verifyingKey()))
                                .as(changed)
                                .isFalse();
                    } catch (Malformed refused) {
                        assertThat(refused.fault()).isNotNull();
                    }
                }
            }
        }
    }

    @Test
    void a_type_is_a_word() {
        for (var type : new String[] {"", "Entry", "a b", "a".repeat(41), "a\n"}) {
            assertThatThrownBy(() -> Signed.sign(type, wren(), KEY))
                    .as(type)
                    .isInstanceOf(IllegalArgumentException.class);
        }
        assertThat(Signed.parse(Signed.sign("a".repeat(40), wren(), KEY).compact(), MOST)
                        .type())
                .hasSize(40);
    }

    private static ObjectNode wren() {
        return JsonNodeFactory.instance
                .objectNode()
                .put("name", "Wren")
                .put("seq", 1)
                .put("far", 1L << 40);
    }

    private static String signed(String header, String payload) {
        var encoder = Base64.getUrlEncoder().withoutPadding();
        var input =
                encoder.encodeToString(header.getBytes(UTF_8)) + "." + encoder.encodeToString(payload.getBytes(UTF_8));
        return input + "." + encoder.encodeToString(KEY.sign(input.getBytes(UTF_8)));
    }

    private static void refused(Fault fault, String compact) {
        assertThatThrownBy(() -> Signed.parse(compact, MOST))
                .as(compact)
                .isInstanceOfSatisfying(
                        Malformed.class, e -> assertThat(e.fault()).isEqualTo(fault));
    }
}
