package org.demebook.merkle;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.demebook.signing.Malformed;
import org.demebook.signing.Malformed.Fault;
import org.demebook.signing.SigningKey;
import org.demebook.signing.VerifyingKey;

/**
 * A checkpoint as a C2SP signed note: the signature of its journal's node, then cosignatures ({@code cosignature/v1}) of those
 * who saw it follow from the head that they knew. Names of signers are node ids. Equal by text.
 */
public final class SignedCheckpoint {
    /** Cosignatures on one checkpoint. */
    public static final int MOST_COSIGNATURES = 64;

    /** A note with all of them is shorter. */
    private static final int MOST_BYTES = 16 * 1024;

    private static final Pattern SIZE = Pattern.compile("0|[1-9][0-9]{0,15}");
    private static final int BODY_LINES = 3;

    private final Checkpoint checkpoint;
    private final NoteSignature signature;
    private final List<NoteSignature> cosignatures;

    private SignedCheckpoint(Checkpoint checkpoint, NoteSignature signature, List<NoteSignature> cosignatures) {
        this.checkpoint = checkpoint;
        this.signature = signature;
        this.cosignatures = List.copyOf(cosignatures);
    }

    public static SignedCheckpoint sign(Checkpoint checkpoint, String name, SigningKey key) {
        return new SignedCheckpoint(checkpoint, NoteSignature.of(checkpoint, name, key), List.of());
    }

    /**
     * Reads what a stranger sent; the form is checked, the signatures are <em>not</em>: ask {@link #isBy} and {@link #isCosignedBy}.
     *
     * @param mostBytes the largest size that is taken, as UTF-8
     * @throws Malformed for any other form
     */
    public static SignedCheckpoint parse(String text, int mostBytes) {
        if (text.length() > mostBytes || text.getBytes(StandardCharsets.UTF_8).length > mostBytes) {
            throw new Malformed(Fault.TOO_LARGE, "a checkpoint beyond the " + mostBytes + " bytes that are taken");
        }
        var lines = List.of(text.split("\n", -1));
        int last = lines.size() - 1; // what follows the last line feed
        if (last < BODY_LINES + 2
                || !lines.get(BODY_LINES).isEmpty()
                || !lines.get(last).isEmpty()
                || !SIZE.matcher(lines.get(1)).matches()) {
            throw malformed("three lines, the second a number, an empty one, and at least one signature line");
        }
        var checkpoint = new Checkpoint(lines.get(0), Long.parseLong(lines.get(1)), decode(lines.get(2)));
        List<NoteSignature> signatures = new ArrayList<>();
        for (var line : lines.subList(BODY_LINES + 1, last)) {
            add(signatures, line(line));
        }
        return new SignedCheckpoint(checkpoint, signatures.get(0), signatures.subList(1, signatures.size()));
    }

    /** The same of at most 16 KiB, which is more than any note has. */
    public static SignedCheckpoint parse(String text) {
        return parse(text, MOST_BYTES);
    }

    private static NoteSignature line(String line) {
        var words = line.split(" ", -1);
        if (words.length != 3 || !words[0].equals(NoteSignature.DASH)) {
            throw malformed("a signature line is a dash, a name and a signature");
        }
        return new NoteSignature(words[1], decode(words[2]));
    }

    private static void add(List<NoteSignature> signatures, NoteSignature next) {
        if (next.isCosignature() == signatures.isEmpty()) {
            throw malformed("first the signature of the journal's node, then cosignatures only");
        }
        if (signatures.stream().anyMatch(next::isOfOneSigner)) {
            throw malformed("one cosignature of each name and key");
        }
        if (signatures.size() > MOST_COSIGNATURES) {
            throw new Malformed(Fault.TOO_LARGE, "at most " + MOST_COSIGNATURES + " cosignatures");
        }
        signatures.add(next);
    }

    private static byte[] decode(String base64) {
        try {
            byte[] bytes = Base64.getDecoder().decode(base64);
            // the decoder goes without padding, and takes bits beyond the last byte that are not zero
            if (Base64.getEncoder().encodeToString(bytes).equals(base64)) {
                return bytes;
            }
        } catch (IllegalArgumentException e) {
            throw malformed("not base64: " + e.getMessage());
        }
        throw malformed("base64 without padding, or with bits beyond the last byte");
    }

    private static Malformed malformed(String rule) {
        return new Malformed(Fault.NOT_A_CHECKPOINT, rule);
    }

    public Checkpoint checkpoint() {
        return checkpoint;
    }

    /** The name that claims to have signed; not verified. */
    public String signer() {
        return signature.name();
    }

    /** Whether that key signed it as that name. */
    public boolean isBy(String name, VerifyingKey key) {
        return signature.isBy(checkpoint, name, key);
    }

    /**
     * The same with a further cosignature; one by the same name and key is replaced.
     *
     * @param at when, in whole seconds
     * @throws IllegalStateException beyond {@link #MOST_COSIGNATURES}: keep only {@link #cosignaturesOf those that are verified}
     */
    public SignedCheckpoint cosigned(String name, Instant at, SigningKey key) {
        var next = NoteSignature.cosignature(checkpoint, name, at, key);
        List<NoteSignature> all = new ArrayList<>(cosignatures);
        all.removeIf(next::isOfOneSigner);
        if (all.size() == MOST_COSIGNATURES) {
            throw new IllegalStateException("there are " + MOST_COSIGNATURES + " cosignatures already");
        }
        all.add(next);
        return new SignedCheckpoint(checkpoint, signature, all);
    }

    /** The same without any cosignature but those that are verified of these; anybody can add lines that are none. */
    public SignedCheckpoint cosignaturesOf(Map<String, VerifyingKey> keys) {
        var kept = cosignatures.stream()
                .filter(line ->
                        keys.containsKey(line.name()) && line.isBy(checkpoint, line.name(), keys.get(line.name())))
                .toList();
        return new SignedCheckpoint(checkpoint, signature, kept);
    }

    /** Whether that key cosigned it as that name. */
    public boolean isCosignedBy(String name, VerifyingKey key) {
        return cosignedAt(name, key).isPresent();
    }

    /** When that key cosigned it as that name, by the cosigner's clock; empty if it did not. */
    public Optional<Instant> cosignedAt(String name, VerifyingKey key) {
        return cosignatures.stream()
                .filter(line -> line.isBy(checkpoint, name, key))
                .map(NoteSignature::at)
                .findFirst();
    }

    /** The names that claim to have cosigned, in the order of their lines; not verified. */
    public List<String> cosigners() {
        return cosignatures.stream().map(NoteSignature::name).toList();
    }

    /** The note, as it is stored and passed on. */
    public String text() {
        var text = new StringBuilder(checkpoint.body()).append('\n').append(signature.line());
        cosignatures.forEach(line -> text.append(line.line()));
        return text.toString();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SignedCheckpoint that && text().equals(that.text());
    }

    @Override
    public int hashCode() {
        return text().hashCode();
    }

    @Override
    public String toString() {
        return text();
    }
}
