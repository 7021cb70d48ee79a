package org.demebook.peering;

import java.security.KeyStore;

/** The key pair with which the node's TLS port is reached, and its certificate, which it made itself. */
record TlsKey(KeyStore store, char[] password, String pin) {
    @Override
    public String toString() {
        return "TLS key " + pin;
    }
}
