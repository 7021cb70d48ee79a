package org.demebook.peering;

import java.nio.file.Path;
import org.demebook.signing.KeyChain;
import org.demebook.signing.SigningKey;
import org.demebook.signing.VerifyingKey;
import org.jspecify.annotations.Nullable;

/** The files of a node's identity. */
final class KeyFolder {
    /** @param recovery public half of the recovery key that the chain commits to */
    record Secret(SigningKey key, VerifyingKey recovery) {}

    record Opened(KeyChain chain, Secret secret, TlsKey tls) {}

    KeyFolder(Path folder) {}

    Opened open(@Nullable Path recoveryKey) {
        throw new UnsupportedOperationException();
    }

    void replace(KeyChain chain, Secret secret, @Nullable SigningKey nextRecovery) {
        throw new UnsupportedOperationException();
    }
}
