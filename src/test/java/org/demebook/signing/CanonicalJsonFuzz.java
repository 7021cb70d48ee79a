package org.demebook.signing;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;

class CanonicalJsonFuzz {
    private static final int MOST = 4_096;

    @FuzzTest
    void what_is_taken_is_written_in_the_same_bytes(byte[] bytes) {
        try {
            assertThat(CanonicalJson.write(CanonicalJson.read(bytes, MOST))).isEqualTo(bytes);
        } catch (Malformed refused) {
            assertThat(refused.getMessage()).isNotBlank();
        }
    }
}
