package org.demebook.peering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.KeyStore;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Date;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.bouncycastle.asn1.x509.Certificate;
import org.demebook.signing.SigningKey;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NodeIdentityTest {
    private static final Set<String> FILES = Set.of("node.key", "key-chain.json", "recovery.key", "tls.p12");

    @TempDir
    Path state;

    private Path folder() {
        return state.resolve("federation");
    }

    @Test
    void a_node_is_made_once_and_stays_who_it_is() {
        var made = NodeIdentity.in(folder());
        var again = NodeIdentity.in(folder());
        assertThat(again.nodeId()).isEqualTo(made.nodeId()).hasSize(43);
        assertThat(again.tlsPin()).isEqualTo(made.tlsPin());
        assertThat(again.signingKey().seed()).isEqualTo(made.signingKey().seed());
        assertThat(made.nodeId()).isEqualTo(made.keys().first().thumbprint());
    }

    @Test
    void the_fingerprint_is_the_id_in_groups_of_four() {
        assertThat(NodeIdentity.fingerprint("kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k"))
                .isEqualTo("kPrK _qmx VWaY VA9w wBF6 Iuo3 vVzz 7TxH CTwX Bygr S4k");
    }

    @Test
    void all_of_it_is_its_owners_alone() throws IOException {
        NodeIdentity.in(folder());
        try (var files = Files.list(folder())) {
            assertThat(files.map(file -> file.getFileName().toString()).toList())
                    .containsExactlyInAnyOrderElementsOf(FILES);
        }
        assertThat(rights(folder())).isEqualTo("rwx------");
        for (var file : FILES) {
            assertThat(rights(folder().resolve(file))).as(file).isEqualTo("rw-------");
        }
    }

    @Test
    void a_folder_that_others_can_read_is_refused_with_what_to_do() throws IOException {
        NodeIdentity.in(folder());
        for (var file : FILES) {
            Files.setPosixFilePermissions(folder().resolve(file), PosixFilePermissions.fromString("rw-r-----"));
            assertThatThrownBy(() -> NodeIdentity.in(folder()))
                    .isInstanceOf(UnusableIdentity.class)
                    .hasMessageContaining(file)
                    .hasMessageContaining("rw-r-----")
                    .hasMessageContaining("chmod -R go=");
            Files.setPosixFilePermissions(folder().resolve(file), PosixFilePermissions.fromString("rw-------"));
        }
        Files.setPosixFilePermissions(folder(), PosixFilePermissions.fromString("rwx--x--x"));
        assertThatThrownBy(() -> NodeIdentity.in(folder())).isInstanceOf(UnusableIdentity.class);
    }

    /** Bouncy Castle, another reader of X.509 than the one that wrote it. */
    @Test
    void the_certificate_is_one_by_another_reading_and_the_pin_is_of_its_key() throws Exception {
        var identity = NodeIdentity.in(folder());
        var store = KeyStore.getInstance("PKCS12");
        try (var file = Files.newInputStream(folder().resolve("tls.p12"))) {
            store.load(file, TlsKey.PASSWORD.toCharArray());
        }
        var der = store.getCertificate("tls").getEncoded();
        var read = Certificate.getInstance(der);
        assertThat(read.getEncoded("DER")).as("in DER, the one form").isEqualTo(der);
        assertThat(read.getVersionNumber()).isEqualTo(3);
        assertThat(read.getIssuer()).isEqualTo(read.getSubject());
        assertThat(read.getEndDate().getDate()).isAfter(Date.from(Instant.parse("9999-12-30T00:00:00Z")));
        store.getCertificate("tls").verify(store.getCertificate("tls").getPublicKey());
        var digest = MessageDigest.getInstance("SHA-256")
                .digest(read.getSubjectPublicKeyInfo().getEncoded("DER"));
        assertThat(identity.tlsPin())
                .isEqualTo(Base64.getUrlEncoder().withoutPadding().encodeToString(digest));
    }

    @Test
    void a_rotated_key_is_in_use_at_once_and_after_a_start() {
        var identity = NodeIdentity.in(folder());
        var before = identity.keys();
        var old = identity.signingKey().verifyingKey();
        var after = identity.rotate();
        assertThat(after.extendsChain(before)).isTrue();
        assertThat(after.current())
                .isNotEqualTo(old)
                .isEqualTo(identity.signingKey().verifyingKey());
        assertThat(identity.nodeId()).isEqualTo(before.nodeId());
        var again = NodeIdentity.in(folder());
        assertThat(again.keys().current()).isEqualTo(after.current());
        assertThat(again.signingKey().verifyingKey()).isEqualTo(after.current());
        assertThat(again.rotate().keys()).hasSize(3);
    }

    // ── the machine stops at any moment ──────────────────────────────────────────────────────────────────────────────

    private static final class MachineStops extends RuntimeException {}

    /** Does the work again and again, and stops it before its first, second … change of the disk, until it comes through. */
    private int stoppedAtEachStep(Consumer<KeyFolder> work, Runnable check) {
        for (int stop = 1; ; stop++) {
            var left = new AtomicInteger(stop);
            var stopping = new KeyFolder(folder(), () -> {
                if (left.decrementAndGet() <= 0) {
                    throw new MachineStops();
                }
            });
            try {
                work.accept(stopping);
                return stop - 1;
            } catch (MachineStops stopped) {
                check.run();
            }
        }
    }

    @Test
    void a_start_that_is_cut_off_leaves_nothing_or_a_whole_node() {
        int steps = stoppedAtEachStep(
                folder -> folder.open(null), () -> assertThat(folder()).doesNotExist());
        assertThat(steps).isGreaterThanOrEqualTo(6);
        var made = NodeIdentity.in(folder());
        assertThat(made.keys().keys()).hasSize(1);
        assertThat(state.toFile().list()).as("nothing half-made is left").containsExactly("federation");
    }

    @Test
    void a_rotation_that_is_cut_off_leaves_the_old_key_or_the_next_and_the_chain_that_goes_with_it() {
        var first = NodeIdentity.in(folder());
        var nodeId = first.nodeId();
        var lengths = new ArrayList<Integer>();
        int steps = stoppedAtEachStep(
                keys -> {
                    var opened = new KeyFolder(folder()).open(null);
                    var next = SigningKey.generate();
                    var chain = opened.chain()
                            .rotated(
                                    opened.secret().key(), next, opened.secret().recovery());
                    keys.replace(
                            chain, new KeyFolder.Secret(next, opened.secret().recovery()), null);
                },
                () -> {
                    var left = NodeIdentity.in(folder());
                    lengths.add(left.keys().keys().size());
                    assertThat(left.nodeId()).isEqualTo(nodeId);
                    assertThat(left.signingKey().verifyingKey())
                            .isEqualTo(left.keys().current());
                    var again = NodeIdentity.in(folder());
                    assertThat(again.keys().current()).isEqualTo(left.keys().current());
                });
        assertThat(steps).isGreaterThanOrEqualTo(4);
        // some stops lay before the change, some after it
        assertThat(lengths).startsWith(1).isSorted();
        assertThat(lengths.get(lengths.size() - 1)).isGreaterThan(1);
    }

    @Test
    void a_recovery_that_is_cut_off_can_be_repeated() throws IOException {
        var nodeId = NodeIdentity.in(folder()).nodeId();
        var safe = state.resolve("safe");
        Files.move(folder().resolve("recovery.key"), safe);
        Files.delete(folder().resolve("node.key"));
        int steps = stoppedAtEachStep(keys -> keys.open(safe), () -> {
            // whoever starts the server again does it the same way, and gets either the recovery or what came of it
            assertThat(folder().resolve("key-chain.json")).exists();
        });
        assertThat(steps).isGreaterThanOrEqualTo(5);
        var recovered = NodeIdentity.in(folder());
        assertThat(recovered.nodeId()).isEqualTo(nodeId);
        assertThat(recovered.keys().keys()).hasSize(2);
        assertThat(folder().resolve("recovery.key")).exists();
    }

    // ── a lost key ───────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_lost_key_is_followed_by_one_that_the_recovery_key_signed() throws IOException {
        var before = NodeIdentity.in(folder());
        before.rotate();
        var chain = before.keys();
        var safe = state.resolve("safe");
        Files.move(folder().resolve("recovery.key"), safe);
        Files.delete(folder().resolve("node.key"));
        assertThatThrownBy(() -> NodeIdentity.in(folder()))
                .isInstanceOf(UnusableIdentity.class)
                .hasMessageContaining("node.key")
                .hasMessageContaining("demebook.federation.recovery-key");

        var recovered = NodeIdentity.in(folder(), safe);
        assertThat(recovered.nodeId()).isEqualTo(chain.nodeId());
        assertThat(recovered.keys().extendsChain(chain)).isTrue();
        assertThat(recovered.keys().keys()).hasSize(3);
        assertThat(recovered.keys().recovery()).isNotEqualTo(chain.recovery());
        // the setting forgotten in the next start does nothing
        assertThat(NodeIdentity.in(folder(), safe).keys().keys()).hasSize(3);
        // and the other recovery key works
        var nextSafe = state.resolve("next-safe");
        Files.move(folder().resolve("recovery.key"), nextSafe);
        Files.delete(folder().resolve("node.key"));
        assertThatThrownBy(() -> NodeIdentity.in(folder(), safe))
                .hasMessageContaining(recovered.keys().recovery());
        assertThat(NodeIdentity.in(folder(), nextSafe).keys().keys()).hasSize(4);
    }

    @Test
    void a_recovery_key_that_was_left_in_the_folder_works_from_there() throws IOException {
        var nodeId = NodeIdentity.in(folder()).nodeId();
        Files.delete(folder().resolve("node.key"));
        var recovered = NodeIdentity.in(folder(), folder().resolve("recovery.key"));
        assertThat(recovered.nodeId()).isEqualTo(nodeId);
        assertThat(recovered.keys().keys()).hasSize(2);
        Files.delete(folder().resolve("node.key"));
        assertThat(NodeIdentity.in(folder(), folder().resolve("recovery.key"))
                        .keys()
                        .keys())
                .hasSize(3);
    }

    @Test
    void keys_of_an_older_backup_are_told_from_the_ones_in_use() throws IOException {
        var identity = NodeIdentity.in(folder());
        var old = Files.readAllBytes(folder().resolve("node.key"));
        identity.rotate();
        Files.write(folder().resolve("node.key"), old);
        assertThatThrownBy(() -> NodeIdentity.in(folder())).hasMessageContaining("not the key in use");
    }

    @Test
    void a_missing_or_damaged_chain_is_no_reason_to_become_somebody_else() throws IOException {
        NodeIdentity.in(folder());
        var chain = folder().resolve("key-chain.json");
        var good = Files.readString(chain);
        Files.writeString(chain, good.replaceFirst("founding", "Founding"));
        assertThatThrownBy(() -> NodeIdentity.in(folder()))
                .isInstanceOf(UnusableIdentity.class)
                .hasMessageContaining("key-chain.json");
        Files.delete(chain);
        assertThatThrownBy(() -> NodeIdentity.in(folder()))
                .isInstanceOf(UnusableIdentity.class)
                .hasMessageContaining("missing");
    }

    @Test
    void no_message_quotes_a_damaged_key() throws IOException {
        var seed = seed(NodeIdentity.in(folder()));
        Files.writeString(folder().resolve("node.key"), "{\"key\":\"" + seed + "\",\"recovery\":7}");
        assertThatThrownBy(() -> NodeIdentity.in(folder()))
                .isInstanceOf(UnusableIdentity.class)
                .hasNoCause()
                .satisfies(told -> assertThat(told.getMessage()).doesNotContain(seed.substring(0, 12)));
    }

    private static String seed(NodeIdentity identity) {
        return Base64.getUrlEncoder()
                .withoutPadding()
                .encodeToString(identity.signingKey().seed());
    }

    private static String rights(Path file) throws IOException {
        return PosixFilePermissions.toString(
                Files.getPosixFilePermissions(file).stream().collect(Collectors.toSet()));
    }
}
