package org.demebook.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.demebook.signing.CanonicalJson;
import org.demebook.signing.Malformed;
import org.demebook.signing.Signed;
import org.demebook.signing.SigningKey;

class EntryFuzz {
    private static final SigningKey KEY = SigningKey.ofSeed(new byte[32]);

    /** The input is a payload: signed here, else no guess would get behind the signature. */
    @FuzzTest
    void a_statement_that_is_read_has_one_form(byte[] payload) {
        try {
            var read = Entry.read(Signed.sign(Entry.TYPE, CanonicalJson.read(payload, Entry.MOST_CHARACTERS), KEY));
            assertThat(CanonicalJson.write(StatementForm.write(read.says()))).isEqualTo(CanonicalJson.write((ObjectNode)
                    read.signed().payload().get("says")));
        } catch (Malformed | BadStatement refused) {
            assertThat(refused.getMessage()).isNotBlank();
        }
    }
}
