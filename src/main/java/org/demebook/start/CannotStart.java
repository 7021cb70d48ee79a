package org.demebook.start;

/** The server cannot start; the message tells the operator what to do, without a stack trace to read. */
final class CannotStart extends RuntimeException {

    private static final long serialVersionUID = 1L;

    CannotStart(String message) {
        super(message);
    }

    CannotStart(String message, Throwable cause) {
        super(message, cause);
    }
}
