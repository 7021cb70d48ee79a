package org.demebook.peering;

/** Another node gave no answer that can be used. The message says what happened, for an administrator; it holds nothing that the peer wrote. */
public final class PeerTrouble extends RuntimeException {
    private static final long serialVersionUID = 1;

    /** What came in between. */
    public enum Kind {
        /** nothing listens there, the name is not known, or the connection broke */
        UNREACHABLE,
        /** no answer in time */
        TIMED_OUT,
        /** the certificate has another key than the pinned one */
        WRONG_TLS_KEY,
        /** it does not speak TLS 1.3, or not well */
        NO_TLS,
        REDIRECTED,
        ANSWER_TOO_LARGE,
        /** an answer that is none of ours */
        NOT_UNDERSTOOD,
        /** it answered with an error: {@link PeerTrouble#status()}, {@link PeerTrouble#error()} */
        REFUSED
    }

    private final Kind kind;
    private final int status;
    private final String error;

    PeerTrouble(Kind kind, String message, Throwable cause) {
        super(message, cause, false, false);
        this.kind = kind;
        this.status = 0;
        this.error = "";
    }

    public PeerTrouble(Kind kind, String message) {
        this(kind, message, 0, "");
    }

    private PeerTrouble(Kind kind, String message, int status, String error) {
        super(message, null, false, false);
        this.kind = kind;
        this.status = status;
        this.error = error;
    }

    /** @param error the peer's word, such as {@code cursor-too-old} */
    public static PeerTrouble refused(Peer peer, int status, String error) {
        return new PeerTrouble(
                Kind.REFUSED,
                "%s (%s) refused: %s".formatted(peer.name(), NodeIdentity.fingerprint(peer.nodeId()), error),
                status,
                error);
    }

    public Kind kind() {
        return kind;
    }

    /** The HTTP status with which it refused; 0 where it did not. */
    public int status() {
        return status;
    }

    /** The word with which it refused, of a–z, 0–9 and hyphen; empty where it did not. */
    public String error() {
        return error;
    }
}
