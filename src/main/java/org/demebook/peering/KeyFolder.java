package org.demebook.peering;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.util.Base64;
import java.util.Objects;
import org.demebook.signing.CanonicalJson;
import org.demebook.signing.KeyChain;
import org.demebook.signing.Malformed;
import org.demebook.signing.SigningKey;
import org.demebook.signing.VerifyingKey;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * The files of a node's identity. The folder comes to be as a whole; a key changes with the chain in one step, the renaming of
 * {@code key-chain.json}: before it the next key waits in {@code node.key.next}, after it that file takes its place, at the
 * latest when the folder is opened again.
 */
final class KeyFolder {
    private static final Logger LOG = Logger.getLogger(KeyFolder.class);
    private static final String KEY = "node.key";
    private static final String CHAIN = "key-chain.json";
    private static final String RECOVERY = "recovery.key";
    private static final String TLS = "tls.p12";
    private static final String NEXT = ".next";
    private static final int MOST_SECRET_BYTES = 1_000;
    private static final String RUNBOOK = "deploy/federation-keys.md says what to do";

    private final Path folder;
    private final Runnable beforeEachStep;

    /** @param recovery public half of the recovery key that the chain commits to */
    record Secret(SigningKey key, VerifyingKey recovery) {
        boolean fits(KeyChain chain) {
            return key.verifyingKey().equals(chain.current())
                    && recovery.thumbprint().equals(chain.recovery());
        }

        byte[] toJson() {
            return CanonicalJson.write(JsonNodeFactory.instance
                    .objectNode()
                    .put("key", encoded(key))
                    .put("recovery", recovery.x()));
        }

        static Secret parse(byte[] bytes) {
            var json = CanonicalJson.read(bytes, MOST_SECRET_BYTES);
            return new Secret(
                    decoded(json.path("key").asText()),
                    new VerifyingKey(json.path("recovery").asText()));
        }
    }

    record Opened(KeyChain chain, Secret secret, TlsKey tls) {}

    KeyFolder(Path folder) {
        this(folder, () -> {});
    }

    KeyFolder(Path folder, Runnable beforeEachStep) {
        this.folder = folder.toAbsolutePath();
        this.beforeEachStep = beforeEachStep;
    }

    /** @throws UnusableIdentity with what to do */
    Opened open(@Nullable Path recoveryKey) {
        try {
            Files.createDirectories(folder.getParent());
            var files = new PrivateFiles(folder.getParent(), beforeEachStep);
            if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
                create(files);
            }
            files.requirePrivate(folder);
            var chain = chain();
            settle(files, chain);
            var secret = secret(chain, recoveryKey);
            if (secret == null) {
                var recovered = recover(chain, recoveryKey);
                chain = recovered.chain;
                secret = recovered.secret;
            }
            tellOfRecoveryKey();
            return new Opened(chain, secret, tls(files));
        } catch (IOException | GeneralSecurityException e) {
            throw new UnusableIdentity("This node's keys in %s cannot be read or made: %s".formatted(folder, e), e);
        }
    }

    private void create(PrivateFiles files) throws IOException, GeneralSecurityException {
        deleteUnfinished();
        var fresh = files.newFolderBeside(folder);
        var key = SigningKey.generate();
        var recovery = SigningKey.generate();
        files.write(fresh.resolve(RECOVERY), recoveryJson(recovery));
        files.write(fresh.resolve(KEY), new Secret(key, recovery.verifyingKey()).toJson());
        files.write(
                fresh.resolve(CHAIN),
                CanonicalJson.write(KeyChain.of(key, recovery.verifyingKey()).toJson()));
        files.write(fresh.resolve(TLS), TlsKey.generate().store());
        files.syncFolder(fresh);
        files.moveIntoPlace(fresh, folder);
        LOG.infof(
                "This node's keys were made in %s; its id is the thumbprint %s",
                folder, key.verifyingKey().thumbprint());
    }

    private void deleteUnfinished() throws IOException {
        try (var folders = Files.newDirectoryStream(folder.getParent(), folder.getFileName() + ".new-*")) {
            for (var unfinished : folders) {
                PrivateFiles.deleteFolder(unfinished);
            }
        }
    }

    private KeyChain chain() throws IOException {
        var file = folder.resolve(CHAIN);
        if (!Files.exists(file)) {
            throw new UnusableIdentity(
                    "%s is missing, the list of this node's keys. It is no secret: take it from a backup, or from a peer. %s."
                            .formatted(file, RUNBOOK));
        }
        try {
            return KeyChain.parse(CanonicalJson.read(Files.readAllBytes(file), Limits.MOST_KEY_DOCUMENT_BYTES));
        } catch (Malformed e) {
            throw new UnusableIdentity(
                    "%s is not as this server wrote it (%s). Take it from a backup, or from a peer. %s."
                            .formatted(file, e.getMessage(), RUNBOOK));
        }
    }

    /** Ends a change of keys that was cut off, or takes it back. */
    private void settle(PrivateFiles files, KeyChain chain) throws IOException {
        var next = folder.resolve(KEY + NEXT);
        if (Files.exists(next)) {
            var secret = readSecret(next);
            if (secret != null && secret.fits(chain)) {
                files.moveIntoPlace(next, folder.resolve(KEY));
            } else {
                files.delete(next);
            }
        }
        var nextRecovery = folder.resolve(RECOVERY + NEXT);
        if (Files.exists(nextRecovery)) {
            var recovery = readRecovery(nextRecovery);
            if (recovery != null && recovery.verifyingKey().thumbprint().equals(chain.recovery())) {
                files.moveIntoPlace(nextRecovery, folder.resolve(RECOVERY));
            } else {
                files.delete(nextRecovery);
            }
        }
        files.delete(folder.resolve(CHAIN + NEXT)); // of a change that never came to be
    }

    /** The key in use; null where it is lost and a recovery key was brought. */
    private @Nullable Secret secret(KeyChain chain, @Nullable Path recoveryKey) throws IOException {
        var file = folder.resolve(KEY);
        var secret = Files.exists(file) ? readSecret(file) : null;
        if (secret != null && secret.fits(chain)) {
            if (recoveryKey != null) {
                LOG.info(
                        "The key in use is here: no recovery key is needed. Start without demebook.federation.recovery-key.");
            }
            return secret;
        }
        if (recoveryKey == null) {
            throw new UnusableIdentity(
                    ("%s %s. Take it from a backup of this folder, or start once with -Ddemebook.federation.recovery-key=… "
                                    + "and the recovery key that was put away; nobody else can bring this node's id back. %s.")
                            .formatted(
                                    file,
                                    secret == null
                                            ? "is missing or damaged"
                                            : "is not the key in use by " + CHAIN
                                                    + ", but an older one or another node's",
                                    RUNBOOK));
        }
        return null;
    }

    private record Recovered(KeyChain chain, Secret secret) {}

    private Recovered recover(KeyChain chain, @Nullable Path recoveryKey) throws IOException {
        var file = Objects.requireNonNull(recoveryKey);
        var recovery = Files.exists(file) ? readRecovery(file) : null;
        if (recovery == null || !recovery.verifyingKey().thumbprint().equals(chain.recovery())) {
            throw new UnusableIdentity("%s %s; wanted is the one with the thumbprint %s. %s."
                    .formatted(
                            file,
                            recovery == null
                                    ? "holds no recovery key"
                                    : "holds the recovery key "
                                            + recovery.verifyingKey().thumbprint(),
                            chain.recovery(),
                            RUNBOOK));
        }
        var next = SigningKey.generate();
        var nextRecovery = SigningKey.generate();
        var longer = chain.recovered(recovery, next, nextRecovery.verifyingKey());
        var secret = new Secret(next, nextRecovery.verifyingKey());
        replace(longer, secret, nextRecovery);
        LOG.warnf(
                "The key in use was lost; a next one (number %d) was made with the recovery key, and with it another recovery key.",
                longer.keys().size());
        return new Recovered(longer, secret);
    }

    /**
     * Puts a longer chain and its key in the place of those before.
     *
     * @throws UnusableIdentity if it could not be written: those before are still in use
     */
    void replace(KeyChain chain, Secret secret, @Nullable SigningKey nextRecovery) {
        var files = new PrivateFiles(folder, beforeEachStep);
        try {
            files.write(folder.resolve(KEY + NEXT), secret.toJson());
            if (nextRecovery != null) {
                files.write(folder.resolve(RECOVERY + NEXT), recoveryJson(nextRecovery));
            }
            files.write(folder.resolve(CHAIN + NEXT), CanonicalJson.write(chain.toJson()));
            files.syncFolder(folder);
            files.moveIntoPlace(folder.resolve(CHAIN + NEXT), folder.resolve(CHAIN));
        } catch (IOException e) {
            throw new UnusableIdentity(
                    "The next key could not be written to %s: %s. The one before stays in use.".formatted(folder, e),
                    e);
        }
        try {
            settle(files, chain);
        } catch (IOException e) {
            LOG.warnf("The next key is in use, and gets its name when the server starts again: %s", e.getMessage());
        }
    }

    private TlsKey tls(PrivateFiles files) throws IOException, GeneralSecurityException {
        var file = folder.resolve(TLS);
        if (Files.exists(file)) {
            return TlsKey.of(Files.readAllBytes(file));
        }
        var made = TlsKey.generate();
        var fresh = folder.resolve(TLS + NEXT);
        files.write(fresh, made.store());
        files.moveIntoPlace(fresh, file);
        LOG.warnf(
                "%s was missing: a new TLS key was made. Each peer reaches this node again when its administrator has entered the address anew.",
                file);
        return made;
    }

    private void tellOfRecoveryKey() {
        var file = folder.resolve(RECOVERY);
        if (Files.exists(file)) {
            LOG.warnf(
                    "Move %s to a safe place that is offline, and a copy to another one. Whoever has it can take this node's name; "
                            + "without it nobody can save the name once node.key is lost.",
                    file);
        }
    }

    private static @Nullable Secret readSecret(Path file) throws IOException {
        try {
            return Secret.parse(Files.readAllBytes(file));
        } catch (Malformed | IllegalArgumentException damaged) {
            return null; // the message could quote what stands there
        }
    }

    private static @Nullable SigningKey readRecovery(Path file) throws IOException {
        try {
            var json = CanonicalJson.read(Files.readAllBytes(file), MOST_SECRET_BYTES);
            return decoded(json.path("recovery-key").asText());
        } catch (Malformed | IllegalArgumentException damaged) {
            return null;
        }
    }

    private static byte[] recoveryJson(SigningKey recovery) {
        return CanonicalJson.write(JsonNodeFactory.instance.objectNode().put("recovery-key", encoded(recovery)));
    }

    private static String encoded(SigningKey key) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(key.seed());
    }

    private static SigningKey decoded(String seed) {
        return SigningKey.ofSeed(Base64.getUrlDecoder().decode(seed));
    }
}
