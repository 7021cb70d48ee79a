package org.demebook.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import org.demebook.signing.Malformed;

class PageFormFuzz {
    private static final Attacked WORLD = new Attacked();

    /** What is read has one form; and whatever was read, taking it in ends in one of the known ways and accuses nobody honest. */
    @FuzzTest
    void what_is_read_has_one_form_and_does_no_harm(byte[] bytes) {
        FeedPage page;
        try {
            page = PageForm.read(bytes);
        } catch (Malformed refused) {
            assertThat(refused.getMessage()).isNotBlank();
            return;
        }
        assertThat(PageForm.write(page)).isEqualTo(bytes);
        var harbour = WORLD.harbour.participant;
        var before = harbour.heads();
        harbour.take(WORLD.liar.id(), harbour.cursor(WORLD.liar.id()), page);
        assertThat(harbour.heads()).isEqualTo(before);
        assertThat(harbour.fenced()).isFalse();
    }
}
