package org.demebook.handover;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.Random;
import org.demebook.keeper.Secret;
import org.junit.jupiter.api.Test;

class SheetDigestTest {
    /** The one-block message of FIPS 180-4's examples of SHA-256. */
    @Test
    void a_digest_is_sha_256() {
        assertThat(SheetDigest.of("abc".getBytes(StandardCharsets.US_ASCII)))
                .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    /** Against Java's own arithmetic: the first 80 bits as a number in base 32, its digits in Crockford's alphabet. */
    @Test
    void a_code_is_the_head_of_the_digest_in_base_32() {
        var random = new Random(7);
        for (int i = 0; i < 200; i++) {
            var bytes = new byte[32];
            random.nextBytes(bytes);
            var digest = HexFormat.of().formatHex(bytes);
            var digits = new BigInteger(digest.substring(0, 20), 16).toString(32);
            var expected = new StringBuilder();
            for (var digit : ("0".repeat(16 - digits.length()) + digits).toCharArray()) {
                expected.append("0123456789ABCDEFGHJKMNPQRSTVWXYZ".charAt(Character.digit(digit, 32)));
            }
            assertThat(SheetDigest.code(digest).replace("-", "")).as(digest).isEqualTo(expected.toString());
        }
    }

    @Test
    void a_code_survives_being_typed_by_hand() {
        var code = SheetDigest.code(SheetDigest.of(new byte[] {1}));
        assertThat(code).matches("([0-9A-Z]{4}-){3}[0-9A-Z]{4}");
        assertThat(Secret.asIssued(code.toLowerCase().replace("-", " ").replace('0', 'o')))
                .isEqualTo(code);
    }
}
