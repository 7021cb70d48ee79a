package org.demebook.protocol;

/** A payload that is canonical JSON and yet no statement of this protocol. */
final class BadStatement extends RuntimeException {
    BadStatement(String what) {
        super(what);
    }
}
