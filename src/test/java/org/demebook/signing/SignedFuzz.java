package org.demebook.signing;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;

class SignedFuzz {
    private static final int MOST = 8_192;
    private static final SigningKey KEY = SigningKey.ofSeed(new byte[32]);
    private static final String[] PARTS = Signed.sign("demebook-entry", JsonNodeFactory.instance.objectNode(), KEY)
            .compact()
            .split("\\.");

    /** The input is a whole signature, then a header, then a payload: else the guesses would seldom get behind base64. */
    @FuzzTest
    void what_is_taken_has_one_form(byte[] bytes) {
        taken(new String(bytes, ISO_8859_1));
        taken(Base64Url.encode(bytes) + "." + PARTS[1] + "." + PARTS[2]);
        taken(PARTS[0] + "." + Base64Url.encode(bytes) + "." + PARTS[2]);
    }

    private static void taken(String compact) {
        try {
            var signed = Signed.parse(compact, MOST);
            assertThat(signed.compact()).isEqualTo(compact);
            var again = Signed.sign(signed.type(), signed.payload(), KEY).compact();
            var parts = compact.split("\\.");
            assertThat(again).contains("." + parts[1] + ".");
            assertThat(again.startsWith(parts[0] + "."))
                    .isEqualTo(signed.keyId().equals(KEY.verifyingKey().thumbprint()));
            assertThat(signed.isBy(KEY.verifyingKey())).isEqualTo(again.equals(compact));
        } catch (Malformed refused) {
            assertThat(refused.getMessage()).isNotBlank();
        }
    }
}
