package org.demebook.merkle;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.demebook.signing.SigningKey;
import org.demebook.signing.VerifyingKey;

/**
 * A checkpoint as a C2SP signed note, with the signature of its journal's node and cosignatures ({@code cosignature/v1}) of those
 * who saw it follow from the head that they knew. Names of signers are node ids.
 */
public final class SignedCheckpoint {
    public static SignedCheckpoint sign(Checkpoint checkpoint, String name, SigningKey key) {
        throw new UnsupportedOperationException();
    }

    /**
     * Reads what a stranger sent; the form is checked, the signatures are <em>not</em>: ask {@link #isBy} and {@link #isCosignedBy}.
     *
     * @param mostBytes the largest size that is taken, as UTF-8
     * @throws org.demebook.signing.Malformed for any other form
     */
    public static SignedCheckpoint parse(String text, int mostBytes) {
        throw new UnsupportedOperationException();
    }

    public Checkpoint checkpoint() {
        throw new UnsupportedOperationException();
    }

    /** Whether that key signed it as that name. */
    public boolean isBy(String name, VerifyingKey key) {
        throw new UnsupportedOperationException();
    }

    /** The same with a further cosignature; one by the same name and key is replaced. @param at when, in whole seconds */
    public SignedCheckpoint cosigned(String name, Instant at, SigningKey key) {
        throw new UnsupportedOperationException();
    }

    /** Whether that key cosigned it as that name. */
    public boolean isCosignedBy(String name, VerifyingKey key) {
        throw new UnsupportedOperationException();
    }

    /** When that key cosigned it as that name, by the cosigner's clock; empty if it did not. */
    public Optional<Instant> cosignedAt(String name, VerifyingKey key) {
        throw new UnsupportedOperationException();
    }

    /** The names that claim to have cosigned, in the order of their lines; not verified. */
    public List<String> cosigners() {
        throw new UnsupportedOperationException();
    }

    /** The note, as it is stored and passed on. */
    public String text() {
        throw new UnsupportedOperationException();
    }
}
