package org.demebook.peering;

/** The folder with this node's keys cannot be used; the message tells the operator what to do. */
public final class UnusableIdentity extends RuntimeException {
    private static final long serialVersionUID = 1;

    UnusableIdentity(String message) {
        super(message);
    }

    UnusableIdentity(String message, Throwable cause) {
        super(message, cause);
    }
}
