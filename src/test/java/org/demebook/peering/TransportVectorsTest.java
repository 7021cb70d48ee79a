package org.demebook.peering;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.security.Signature;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import org.demebook.Vectors;
import org.demebook.signing.KeyChain;
import org.demebook.signing.Signed;
import org.demebook.signing.SigningKey;
import org.jose4j.jwk.JsonWebKey;
import org.jose4j.jwk.PublicJsonWebKey;
import org.junit.jupiter.api.Test;

/** The published vectors of the wire, reproduced; their signatures are judged by jose4j and the JDK. */
class TransportVectorsTest {
    private static final HexFormat HEX = HexFormat.of();

    /** Of RFC 8032, 7.1, tests 1 and 2: for tests, and for nothing else. */
    private static final String FIRST = "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60";

    private static final String OTHER = "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb";

    @Test
    void node_document_and_request_token() throws Exception {
        var key = SigningKey.ofSeed(HEX.parseHex(FIRST));
        var other = SigningKey.ofSeed(HEX.parseHex(OTHER));
        var recovery = SigningKey.ofSeed(filled(7));
        var keys = KeyChain.of(key, recovery.verifyingKey());
        var to = KeyChain.of(other, recovery.verifyingKey()).nodeId();
        var pin = "LPJNul-wow4m6DsqxbninhsWHlwfp0JecwQzYpOLmCQ"; // of no key

        var made = JsonNodeFactory.instance.objectNode();
        made.putObject("document")
                .put("seed", FIRST)
                .put("recovery", recovery.verifyingKey().thumbprint())
                .put("name", "Harbour")
                .put("tlsPin", pin)
                .put("node", keys.nodeId())
                .put("fingerprint", NodeIdentity.fingerprint(keys.nodeId()))
                .put("bytes", new String(NodeDocument.write(keys, "Harbour", pin, key), UTF_8));
        var requests = made.putArray("requests");
        var target =
                "/federation/populations/0197f3a2-0000-7000-8000-000000000001/journals/" + to + "/entries?after=17";
        for (var request : new String[][] {{"GET", target, ""}, {"POST", "/federation/keys", "{}"}}) {
            var payload =
                    RequestToken.payload(keys.nodeId(), to, request[0] + " " + request[1], request[2].getBytes(UTF_8));
            requests.addObject()
                    .put("seed", FIRST)
                    .put("to", to)
                    .put("method", request[0])
                    .put("target", request[1])
                    .put("body", request[2])
                    .put(
                            "authorization",
                            RequestToken.SCHEME
                                    + Signed.sign(RequestToken.TYPE, payload, key)
                                            .compact());
        }

        var published = Vectors.reproduced("transport", made);
        var document =
                NodeDocument.parse(published.at("/document/bytes").asText().getBytes(UTF_8));
        assertThat(document.keys()).isEqualTo(keys);
        for (var request : published.get("requests")) {
            var token = RequestToken.parse(request.get("authorization").asText());
            assertThat(token.from()).isEqualTo(keys.nodeId());
            assertThat(token.isOf(request.get("body").asText().getBytes(UTF_8))).isTrue();
            assertThat(verifiedElsewhere(token.signed().compact(), key)).isTrue();
            assertThat(verifiedElsewhere(token.signed().compact(), other)).isFalse();
        }
    }

    /** The key as jose4j reads it, the signature as the JDK verifies it. */
    private static boolean verifiedElsewhere(String compact, SigningKey key) throws Exception {
        var x = key.verifyingKey().x();
        var jwk = (PublicJsonWebKey)
                JsonWebKey.Factory.newJwk("{\"kty\":\"OKP\",\"crv\":\"Ed25519\",\"x\":\"" + x + "\"}");
        var parts = compact.split("\\.");
        var verifier = Signature.getInstance("Ed25519");
        verifier.initVerify(jwk.getPublicKey());
        verifier.update((parts[0] + "." + parts[1]).getBytes(UTF_8));
        return verifier.verify(Base64.getUrlDecoder().decode(parts[2]));
    }

    private static byte[] filled(int with) {
        var bytes = new byte[32];
        Arrays.fill(bytes, (byte) with);
        return bytes;
    }
}
