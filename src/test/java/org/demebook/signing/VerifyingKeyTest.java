package org.demebook.signing;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import org.demebook.signing.Malformed.Fault;
import org.jose4j.jwk.JsonWebKey;
import org.jose4j.lang.JoseException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class VerifyingKeyTest {
    // RFC 8037, A.1 and A.2
    private static final String D = "nWGxne_9WmC6hEr0kuwsxERJxWl7MmkZcDusAxyuf2A";
    private static final String X = "11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo";

    @Test
    void the_private_key_of_rfc_8037_has_its_public_key() {
        var key = SigningKey.ofSeed(Base64.getUrlDecoder().decode(D));
        assertThat(key.verifyingKey()).isEqualTo(new VerifyingKey(X));
    }

    @Test
    void its_thumbprint_is_that_of_the_standard() {
        // RFC 8037, A.3
        assertThat(new VerifyingKey(X).thumbprint()).isEqualTo("kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k");
    }

    @Test
    void thumbprints_are_those_of_another_library() throws JoseException {
        // jose4j, once it gives the thumbprint that RFC 7638, 3.1, prints for its RSA key
        var rsa = JsonWebKey.Factory.newJwk(Map.of(
                "kty", "RSA",
                "n",
                        "0vx7agoebGcQSuuPiLJXZptN9nndrQmbXEps2aiAFbWhM78LhWx4cbbfAAtVT86zwu1RK7aPFFxuhDR1L6tSoc_BJECPebWKRXjBZCiFV4n3oknjhMs"
                                + "tn64tZ_2W-5JsGY4Hc5n9yBXArwl93lqt7_RN5w6Cf0h4QyQ5v-65YGjQR0_FDW2QvzqY368QQMicAtaSqzs8KJZgnYb9c7d0zgdAZHzu6qMQvRL5hajrn1n91CbOpbI"
                                + "SD08qNLyrdkt-bFTWhAI4vMQFh6WeZu0fM4lFd2NcRwr3XPksINHaQ-G_xBniIqbw0Ls1jF44-csFCur-kEgU8awapJzKnqDKgw",
                "e", "AQAB"));
        assertThat(rsa.calculateBase64urlEncodedThumbprint("SHA-256"))
                .isEqualTo("NzbLsXh8uDCcd-6MNwXF4W_7noWXFZAfHkxZsRGC9Xs");
        for (int i = 0; i < 20; i++) {
            var key = SigningKey.generate().verifyingKey();
            var jwk = JsonWebKey.Factory.newJwk(Map.of("kty", "OKP", "crv", "Ed25519", "x", key.x()));
            assertThat(key.thumbprint()).isEqualTo(jwk.calculateBase64urlEncodedThumbprint("SHA-256"));
        }
    }

    @Test
    void the_signature_of_rfc_8037_is_made_and_verified() {
        // RFC 8037, A.4 and A.5
        byte[] input = "eyJhbGciOiJFZERTQSJ9.RXhhbXBsZSBvZiBFZDI1NTE5IHNpZ25pbmc".getBytes(UTF_8);
        byte[] signature = Base64.getUrlDecoder()
                .decode("hgyY0il_MGCjP0JzlnLWG1PPOt7-09PGcvMg3AIbQR6dWbhijcNR4ki4iylGjg5BhVsPt9g7sVvpAr_MuM0KAg");
        assertThat(SigningKey.ofSeed(Base64.getUrlDecoder().decode(D)).sign(input))
                .isEqualTo(signature);
        assertThat(new VerifyingKey(X).verifies(input, signature)).isTrue();
    }

    record Vector(String seed, String key, String message, String signature) {}

    static List<Vector> rfc8032() {
        // RFC 8032, 7.1: TEST 1, 2, 3, SHA(abc)
        return List.of(
                new Vector(
                        "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
                        "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
                        "",
                        "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b"),
                new Vector(
                        "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
                        "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
                        "72",
                        "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00"),
                new Vector(
                        "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
                        "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
                        "af82",
                        "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a"),
                new Vector(
                        "833fe62409237b9d62ec77587520911e9a759cec1d19755b7da901b96dca3d42",
                        "ec172b93ad5e563bf4932c70e1245034c35467ef2efd4d64ebf819683467e2bf",
                        "ddaf35a193617abacc417349ae20413112e6fa4e89a97ea20a9eeee64b55d39a2192992a274fc1a836ba3c23a3feebbd454d4423643ce80e2a9ac94fa54ca49f",
                        "dc2a4459e7369633a52b1bf277839a00201009a3efbf3ecb69bea2186c26b58909351fc9ac90b3ecfdfbc7c66431e0303dca179c138ac17ad9bef1177331a704"));
    }

    @ParameterizedTest
    @MethodSource("rfc8032")
    void signatures_are_those_of_rfc_8032(Vector vector) {
        var hex = HexFormat.of();
        var key = SigningKey.ofSeed(hex.parseHex(vector.seed()));
        assertThat(hex.formatHex(key.verifyingKey().encoded())).isEqualTo(vector.key());
        assertThat(hex.formatHex(key.sign(hex.parseHex(vector.message())))).isEqualTo(vector.signature());
        assertThat(key.verifyingKey().verifies(hex.parseHex(vector.message()), hex.parseHex(vector.signature())))
                .isTrue();
    }

    @Test
    void a_key_has_one_form() {
        for (var x : new String[] {
            "", "abc", X + "=", X.replace('_', '/'), X.substring(0, 42) + "p", "A".repeat(43), "é".repeat(43)
        }) {
            assertThatThrownBy(() -> new VerifyingKey(x)).as(x).isInstanceOfSatisfying(Malformed.class, e -> assertThat(
                            e.fault())
                    .isEqualTo(Fault.WRONG_KEY));
        }
    }

    @Test
    void a_signature_of_another_length_is_none() {
        var key = new VerifyingKey(X);
        for (int length : new int[] {0, 1, 32, 63, 65, 128}) {
            assertThat(key.verifies(new byte[0], new byte[length])).isFalse();
        }
    }

    @Test
    void a_private_key_tells_no_text_of_itself() {
        var key = SigningKey.generate();
        assertThat(key.toString()).isEqualTo("SigningKey[" + key.verifyingKey().thumbprint() + "]");
        byte[] copy = key.seed();
        assertThat(SigningKey.ofSeed(copy).verifyingKey()).isEqualTo(key.verifyingKey());
        copy[0]++;
        assertThat(key.seed()).isNotEqualTo(copy);
        assertThatThrownBy(() -> SigningKey.ofSeed(new byte[31])).isInstanceOf(IllegalArgumentException.class);
        assertThat(SigningKey.generate().seed())
                .isNotEqualTo(SigningKey.generate().seed());
    }
}
