package org.demebook.merkle;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.Arrays;
import java.util.Base64;
import java.util.Map;
import org.demebook.signing.Malformed;
import org.demebook.signing.Malformed.Fault;
import org.demebook.signing.SigningKey;
import org.junit.jupiter.api.Test;

class SignedCheckpointTest {
    private static final int MOST = 10_000;
    // the example of C2SP tlog-cosignature, "Format"; its keys are not published
    private static final String EXAMPLE = """
            example.com/behind-the-sofa
            20852163
            CsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=

            \u2014 example.com/behind-the-sofa Az3grlgtzPICa5OS8npVmf1Myq/5IZniMp+ZJurmRDeOoRDe4URYN7u5/Zhcyv2q1gGzGku9nTo+zyWE+xeMcTOAYQ8=
            \u2014 witness.example.com/w1 jWbPPwAAAABkGFDLEZMHwSRaJNiIDoe9DYn/zXcrtPHeolMI5OWXEhZCB9dlrDJsX3b2oyin1nPZqhf5nNo0xUe+mbIUBkBIfZ+qnA==
            """;
    private static final SigningKey HARBOUR = key("harbour");
    private static final SigningKey UPLAND = key("upland");
    private static final String HARBOUR_ID = HARBOUR.verifyingKey().thumbprint();
    private static final String UPLAND_ID = UPLAND.verifyingKey().thumbprint();
    private static final Instant AT = Instant.ofEpochSecond(1_800_000_000);
    private static final Checkpoint HEAD = new Checkpoint(HARBOUR_ID + "/MC", 3, Hashes.leaf(new byte[0]));

    @Test
    void the_example_of_the_specification_is_read_and_written_back() {
        var read = SignedCheckpoint.parse(EXAMPLE, MOST);
        assertThat(read.checkpoint())
                .isEqualTo(new Checkpoint(
                        "example.com/behind-the-sofa",
                        20852163,
                        Base64.getDecoder().decode("CsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=")));
        assertThat(read.signer()).isEqualTo("example.com/behind-the-sofa");
        assertThat(read.cosigners()).containsExactly("witness.example.com/w1");
        assertThat(read.text()).isEqualTo(EXAMPLE);
        assertThat(EXAMPLE).startsWith(read.checkpoint().body() + "\n");
    }

    @Test
    void a_note_signature_is_that_of_the_reference_implementation() {
        // Go's golang.org/x/mod/sumdb/note, note_test.go: key, name, text and signature. The text is no checkpoint, so
        // the parts are compared.
        byte[] seed = Base64.getDecoder().decode("AYEKFALVFGyNhPJEMzD1QIDr+Y7hfZx09iUvxdXHKDFz");
        byte[] expected = Base64.getDecoder()
                .decode("x08go/ZJkuBS9UG/SffcvIAQxVBtiFupLLr8pAcElZInNIuGUgYN1FFYC2pZSNXgKvqfqdngotpRZb6KE6RyyBwJnAM=");
        var key = SigningKey.ofSeed(Arrays.copyOfRange(seed, 1, 33));
        var text =
                "If you think cryptography is the answer to your problem,\nthen you don't know what your problem is.\n";
        assertThat(key.sign(text.getBytes(UTF_8))).isEqualTo(Arrays.copyOfRange(expected, 4, 68));
        var line = NoteSignature.of(HEAD, "PeterNeumann", key).content();
        assertThat(Arrays.copyOf(line, 4)).isEqualTo(Arrays.copyOf(expected, 4));
        assertThat(Arrays.copyOfRange(line, 4, 68))
                .isEqualTo(key.sign(HEAD.body().getBytes(UTF_8)));
    }

    @Test
    void a_cosignature_is_over_the_message_of_the_specification() {
        // C2SP tlog-cosignature, "Ed25519 signed message"
        var example = SignedCheckpoint.parse(EXAMPLE, MOST).checkpoint();
        var message =
                "cosignature/v1\ntime 1679315147\nexample.com/behind-the-sofa\n20852163\nCsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=\n";
        var line = NoteSignature.cosignature(example, "w1", Instant.ofEpochSecond(1679315147), UPLAND);
        assertThat(Arrays.copyOfRange(line.content(), 12, 76)).isEqualTo(UPLAND.sign(message.getBytes(UTF_8)));
        // and the time stands in the example's line where it stands in ours
        byte[] theirs = Base64.getDecoder()
                .decode(EXAMPLE.substring(EXAMPLE.lastIndexOf(' ') + 1).strip());
        assertThat(Arrays.copyOfRange(line.content(), 4, 12)).isEqualTo(Arrays.copyOfRange(theirs, 4, 12));
        assertThat(new NoteSignature("w1", theirs).at()).isEqualTo(Instant.ofEpochSecond(1679315147));
    }

    @Test
    void who_signed_and_who_cosigned_is_known() {
        var signed = SignedCheckpoint.sign(HEAD, HARBOUR_ID, HARBOUR).cosigned(UPLAND_ID, AT, UPLAND);
        var read = SignedCheckpoint.parse(signed.text(), MOST);
        assertThat(read).isEqualTo(signed).hasSameHashCodeAs(signed).hasToString(signed.text());
        assertThat(read.checkpoint()).isEqualTo(HEAD).hasSameHashCodeAs(HEAD);
        assertThat(read.isBy(HARBOUR_ID, HARBOUR.verifyingKey())).isTrue();
        assertThat(read.isBy(HARBOUR_ID, UPLAND.verifyingKey())).isFalse();
        assertThat(read.isBy(UPLAND_ID, HARBOUR.verifyingKey())).isFalse();
        assertThat(read.isCosignedBy(UPLAND_ID, UPLAND.verifyingKey())).isTrue();
        assertThat(read.isCosignedBy(HARBOUR_ID, HARBOUR.verifyingKey())).isFalse();
        assertThat(read.isCosignedBy(UPLAND_ID, HARBOUR.verifyingKey())).isFalse();
        assertThat(read.cosignedAt(UPLAND_ID, UPLAND.verifyingKey())).contains(AT);
    }

    @Test
    void a_signature_is_for_one_head_and_one_moment() {
        var signed = SignedCheckpoint.sign(HEAD, HARBOUR_ID, HARBOUR).cosigned(UPLAND_ID, AT, UPLAND);
        var longer = SignedCheckpoint.parse(signed.text().replace("\n3\n", "\n4\n"), MOST);
        assertThat(longer.checkpoint()).isNotEqualTo(HEAD);
        assertThat(longer.isBy(HARBOUR_ID, HARBOUR.verifyingKey())).isFalse();
        assertThat(longer.isCosignedBy(UPLAND_ID, UPLAND.verifyingKey())).isFalse();
        var line = NoteSignature.cosignature(HEAD, UPLAND_ID, AT, UPLAND);
        byte[] later = line.content().clone();
        later[11]++;
        assertThat(new NoteSignature(UPLAND_ID, later).isBy(HEAD, UPLAND_ID, UPLAND.verifyingKey()))
                .isFalse();
        assertThat(line.isBy(HEAD, UPLAND_ID, UPLAND.verifyingKey())).isTrue();
    }

    @Test
    void a_later_cosignature_of_the_same_key_replaces_the_earlier_one_and_lines_of_nobody_are_left_out() {
        var once = SignedCheckpoint.sign(HEAD, HARBOUR_ID, HARBOUR).cosigned(UPLAND_ID, AT, UPLAND);
        var twice = once.cosigned(UPLAND_ID, AT.plusSeconds(60), UPLAND);
        assertThat(twice.cosigners()).containsExactly(UPLAND_ID);
        assertThat(twice.cosignedAt(UPLAND_ID, UPLAND.verifyingKey())).contains(AT.plusSeconds(60));
        var crowded = SignedCheckpoint.sign(HEAD, HARBOUR_ID, HARBOUR);
        for (int i = 0; i < SignedCheckpoint.MOST_COSIGNATURES - 1; i++) {
            crowded = crowded.cosigned("nobody" + i, AT, key("nobody" + i));
        }
        var full = crowded.cosigned(UPLAND_ID, AT, UPLAND);
        assertThatThrownBy(() -> full.cosigned("one-more", AT, HARBOUR)).isInstanceOf(IllegalStateException.class);
        assertThat(SignedCheckpoint.parse(full.text(), 20_000)
                        .cosignaturesOf(Map.of(UPLAND_ID, UPLAND.verifyingKey(), "nobody1", HARBOUR.verifyingKey())))
                .isEqualTo(once);
        var tooMany = full.text()
                + NoteSignature.cosignature(HEAD, "one-more", AT, HARBOUR).line();
        assertThatThrownBy(() -> SignedCheckpoint.parse(tooMany, 20_000))
                .isInstanceOfSatisfying(
                        Malformed.class, e -> assertThat(e.fault()).isEqualTo(Fault.TOO_LARGE));
    }

    @Test
    void a_checkpoint_has_one_form() {
        var good = SignedCheckpoint.sign(HEAD, HARBOUR_ID, HARBOUR)
                .cosigned(UPLAND_ID, AT, UPLAND)
                .text();
        var lines = good.split("\n");
        for (var text : new String[] {
            "",
            "\n",
            "\n\n\n\n\n\n",
            good.strip(),
            good + "\n",
            "\n" + good,
            good.replace("\n", "\r\n"),
            good.replace("\u2014", "-"),
            good.replace("\u2014 ", "\u2014  "),
            good.replace("\n3\n", "\n03\n"),
            good.replace("\n3\n", "\n+3\n"),
            good.replace("\n3\n", "\n-3\n"),
            good.replace("\n3\n", "\n\n"),
            good.replace("\n3\n", "\n\uff13\n"),
            good.replace("\n3\n", "\n9007199254740992\n"),
            good.replace("\n3\n", "\n99999999999999999999\n"),
            good.replace("\n3\n", "\n0\n"), // whose root is another
            good.replace("\n\n", "\nextension\n\n"),
            good.replace("\n\n", "\n"),
            good.replace("=\n\n", "\n\n"),
            good.replaceFirst("/MC", "/M C"),
            good.replaceFirst("/MC", "/M\u00e9"),
            lines[0] + "\n" + lines[1] + "\n" + lines[2] + "\n\n",
            good + lines[4] + "\n",
            good + lines[5] + "\n",
            String.join("\n", lines[0], lines[1], lines[2], "", lines[5], lines[4], ""),
            good.replace(HARBOUR_ID + " ", "a+b "),
            good.replace(HARBOUR_ID + " ", " "),
            good.substring(0, good.length() - 3) + "\n"
        }) {
            assertThatThrownBy(() -> SignedCheckpoint.parse(text, MOST))
                    .as(text)
                    .isInstanceOfSatisfying(
                            Malformed.class, e -> assertThat(e.fault()).isEqualTo(Fault.NOT_A_CHECKPOINT));
        }
        assertThatThrownBy(() -> SignedCheckpoint.parse(good, good.length() - 1))
                .isInstanceOfSatisfying(
                        Malformed.class, e -> assertThat(e.fault()).isEqualTo(Fault.TOO_LARGE));
    }

    @Test
    void whatever_character_is_changed_somebody_did_not_sign_it() {
        var good = SignedCheckpoint.sign(HEAD, HARBOUR_ID, HARBOUR)
                .cosigned(UPLAND_ID, AT, UPLAND)
                .text();
        for (int at = 0; at < good.length(); at++) {
            for (char other : new char[] {'A', 'b', '4', '\n', ' '}) {
                if (good.charAt(at) != other) {
                    var changed = good.substring(0, at) + other + good.substring(at + 1);
                    try {
                        var read = SignedCheckpoint.parse(changed, MOST);
                        assertThat(read.text()).isEqualTo(changed);
                        assertThat(read.isBy(HARBOUR_ID, HARBOUR.verifyingKey())
                                        && read.isCosignedBy(UPLAND_ID, UPLAND.verifyingKey()))
                                .isFalse();
                    } catch (Malformed refused) {
                        assertThat(refused.fault()).isNotNull();
                    }
                }
            }
        }
    }

    @Test
    void a_moment_beyond_all_calendars_is_refused() {
        byte[] content =
                NoteSignature.cosignature(HEAD, UPLAND_ID, AT, UPLAND).content().clone();
        for (int first : new int[] {0x80, 0x7f, 0x20}) {
            content[4] = (byte) first;
            assertThatThrownBy(() -> new NoteSignature(UPLAND_ID, content)).isInstanceOf(Malformed.class);
        }
    }

    @Test
    void a_checkpoint_is_compared_by_its_content() {
        byte[] root = HEAD.root();
        root[0]++;
        assertThat(HEAD.root()).isNotEqualTo(root);
        assertThat(new Checkpoint(HEAD.origin(), 3, root)).isNotEqualTo(HEAD);
        assertThat(new Checkpoint(HEAD.origin(), 3, HEAD.root()))
                .isEqualTo(HEAD)
                .hasToString(HEAD.toString());
        assertThat(new Checkpoint("x", 0, new MerkleTree().root()).body())
                .isEqualTo("x\n0\n47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=\n");
    }

    private static SigningKey key(String name) {
        return SigningKey.ofSeed(Hashes.sha256(name.getBytes(UTF_8), new byte[0]));
    }
}
