package org.demebook.merkle;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;
import java.util.Base64;
import java.util.regex.Pattern;
import org.demebook.signing.CanonicalJson;
import org.demebook.signing.Malformed;
import org.demebook.signing.SigningKey;
import org.demebook.signing.VerifyingKey;

/**
 * A signature line of a C2SP signed note: {@code — name base64(key hash ‖ signature)}.
 *
 * @param name of who signed: printable ASCII without space and plus
 * @param content the four bytes that tell keys of one name apart, then the signature; with a cosignature eight bytes of Unix time between
 */
record NoteSignature(String name, byte[] content) {
    static final String DASH = "\u2014";

    private static final byte ED25519 = 0x01;
    private static final byte COSIGNATURE = 0x04; // timestamped, cosignature/v1
    private static final Pattern NAME = Pattern.compile("[!-*,-~]{1,255}");
    private static final int HASH_BYTES = 4;
    private static final int TIME_BYTES = 8;
    private static final int SIGNATURE_BYTES = 64;

    NoteSignature {
        boolean timed = content.length == HASH_BYTES + TIME_BYTES + SIGNATURE_BYTES;
        if (!NAME.matcher(name).matches()
                || !timed && content.length != HASH_BYTES + SIGNATURE_BYTES
                || timed
                        && !isTime(
                                ByteBuffer.wrap(content, HASH_BYTES, TIME_BYTES).getLong())) {
            throw new Malformed(
                    Malformed.Fault.NOT_A_CHECKPOINT,
                    "a signature line has a name without space and plus, and an Ed25519 signature or a cosignature");
        }
    }

    // C2SP allows up to 2^63 - 1; a million years fit no calendar
    private static boolean isTime(long unixTime) {
        return unixTime >= 0 && unixTime <= CanonicalJson.MOST_NUMBER;
    }

    static NoteSignature of(Checkpoint checkpoint, String name, SigningKey key) {
        byte[] signature = key.sign(bytes(checkpoint.body()));
        return new NoteSignature(
                name,
                ByteBuffer.allocate(HASH_BYTES + SIGNATURE_BYTES)
                        .put(keyHash(name, ED25519, key.verifyingKey()))
                        .put(signature)
                        .array());
    }

    static NoteSignature cosignature(Checkpoint checkpoint, String name, Instant at, SigningKey key) {
        byte[] signature = key.sign(cosigned(checkpoint, at.getEpochSecond()));
        return new NoteSignature(
                name,
                ByteBuffer.allocate(HASH_BYTES + TIME_BYTES + SIGNATURE_BYTES)
                        .put(keyHash(name, COSIGNATURE, key.verifyingKey()))
                        .putLong(at.getEpochSecond())
                        .put(signature)
                        .array());
    }

    boolean isCosignature() {
        return content.length == HASH_BYTES + TIME_BYTES + SIGNATURE_BYTES;
    }

    /** By the cosigner's clock. */
    Instant at() {
        return Instant.ofEpochSecond(
                ByteBuffer.wrap(content, HASH_BYTES, TIME_BYTES).getLong());
    }

    /** Whether it is of that name and key, by what it says itself. */
    boolean claims(String signer, VerifyingKey key) {
        byte type = isCosignature() ? COSIGNATURE : ED25519;
        return name.equals(signer) && Arrays.equals(keyHash(), keyHash(signer, type, key));
    }

    boolean isBy(Checkpoint checkpoint, String signer, VerifyingKey key) {
        if (!claims(signer, key)) {
            return false;
        }
        byte[] message = isCosignature() ? cosigned(checkpoint, at().getEpochSecond()) : bytes(checkpoint.body());
        return key.verifies(message, Arrays.copyOfRange(content, content.length - SIGNATURE_BYTES, content.length));
    }

    /** Whether both are of one name, kind and key, as they say. */
    boolean isOfOneSigner(NoteSignature other) {
        return name.equals(other.name)
                && isCosignature() == other.isCosignature()
                && Arrays.equals(keyHash(), other.keyHash());
    }

    String line() {
        return DASH + ' ' + name + ' ' + Base64.getEncoder().encodeToString(content) + '\n';
    }

    private byte[] keyHash() {
        return Arrays.copyOf(content, HASH_BYTES);
    }

    private static byte[] keyHash(String name, byte type, VerifyingKey key) {
        byte[] start = bytes(name + '\n' + (char) type);
        return Arrays.copyOf(Hashes.sha256(start, key.encoded()), HASH_BYTES);
    }

    // the message of cosignature/v1
    private static byte[] cosigned(Checkpoint checkpoint, long unixTime) {
        return bytes("cosignature/v1\ntime " + unixTime + '\n' + checkpoint.body());
    }

    private static byte[] bytes(String ascii) {
        return ascii.getBytes(StandardCharsets.US_ASCII);
    }
}
