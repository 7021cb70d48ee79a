package org.demebook.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.Base64;
import java.util.HashMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What keepers write in words is in no entry, and can be taken out for good. */
class WordsTest {
    private static final String NOTES = "shy; feeds after dusk behind Wren's bookcase";
    private static final Entry ENTRY =
            new Entry(UUID.randomUUID(), "M", 7, Instant.parse("2026-03-14T09:00:00Z"), UUID.randomUUID());

    record Noted(
            UUID animalId,
            @Words @Nullable String notes,
            @Words(required = true) String reason) implements Fact {}

    record Marked(String kind, @Words @Nullable String value) implements Fact, Words.Sometimes {
        @Override
        public boolean inOwnWords() {
            return !kind.equals("transponder");
        }
    }

    private final CanonicalEntry form = new CanonicalEntry();
    private final HashMap<String, String> kept = new HashMap<>();

    WordsTest() {
        form.know(Noted.class);
        form.know(Marked.class);
    }

    private String keep(String words) {
        var row = new KeptWords(ENTRY, words);
        kept.put(row.digest, words);
        return row.digest;
    }

    @Test
    void an_entry_holds_a_digest_in_their_place_and_is_read_with_them() {
        var noted = new Noted(UUID.randomUUID(), NOTES, "because");
        var body = form.write(ENTRY, noted, this::keep);
        assertThat(new String(body, StandardCharsets.UTF_8)).doesNotContain(NOTES, "because");
        assertThat(form.read(body, kept::get).fact()).isEqualTo(noted);
    }

    @Test
    void once_taken_out_they_are_absent_or_said_to_be_erased() {
        var noted = new Noted(UUID.randomUUID(), NOTES, "because");
        var body = form.write(ENTRY, noted, this::keep);
        kept.clear();
        assertThat(form.read(body, kept::get).fact()).isEqualTo(new Noted(noted.animalId(), null, Words.ERASED));
    }

    @Test
    void the_same_words_have_another_digest_each_time() {
        assertThat(keep(NOTES)).isNotEqualTo(keep(NOTES));
    }

    /** SHA-256 as java.security has it (FIPS 180-4), base64url as RFC 4648 section 5, over salt and words. */
    @Test
    void the_digest_is_sha_256_of_salt_and_words() throws Exception {
        var row = new KeptWords(ENTRY, NOTES);
        var sha256 = MessageDigest.getInstance("SHA-256");
        sha256.update(row.salt);
        var expected = sha256.digest(NOTES.getBytes(StandardCharsets.UTF_8));
        assertThat(Base64.getUrlDecoder().decode(row.digest)).isEqualTo(expected);
    }

    @Test
    void what_is_not_in_their_own_words_stays_in_the_entry() {
        var transponder = form.write(ENTRY, new Marked("transponder", "981098100000017"), this::keep);
        var reference = form.write(ENTRY, new Marked("own-reference", "Bookcase 3"), this::keep);
        kept.clear();
        assertThat(form.read(transponder, kept::get).fact()).isEqualTo(new Marked("transponder", "981098100000017"));
        assertThat(form.read(reference, kept::get).fact()).isEqualTo(new Marked("own-reference", null));
    }
}
