package org.demebook.merkle;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import org.demebook.signing.Malformed;
import org.demebook.signing.SigningKey;

class SignedCheckpointFuzz {
    private static final SigningKey KEY = SigningKey.ofSeed(new byte[32]);
    private static final String NAME = KEY.verifyingKey().thumbprint();

    @FuzzTest
    void what_is_taken_is_written_in_the_same_characters(byte[] bytes) {
        var text = new String(bytes, UTF_8);
        try {
            var read = SignedCheckpoint.parse(text, 8_192);
            assertThat(read.text()).isEqualTo(text);
            assertThat(text).startsWith(read.checkpoint().body() + "\n");
            var names = read.cosigners();
            assertThat(names).hasSizeLessThanOrEqualTo(SignedCheckpoint.MOST_COSIGNATURES);
            names.forEach(name -> read.cosignedAt(name, KEY.verifyingKey()));
            assertThat(read.isBy(NAME, KEY.verifyingKey()))
                    .isEqualTo(SignedCheckpoint.sign(read.checkpoint(), NAME, KEY)
                            .text()
                            .equals(firstSignatureOf(text)));
        } catch (Malformed refused) {
            assertThat(refused.getMessage()).isNotBlank();
        }
    }

    /** The note without its cosignatures. */
    private static String firstSignatureOf(String note) {
        int signature = note.indexOf("\n\n") + 2;
        return note.substring(0, note.indexOf('\n', signature) + 1);
    }
}
