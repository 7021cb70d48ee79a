package org.demebook.peering;

import org.demebook.signing.KeyChain;

/**
 * This node signs with another key from now on: the chain is on disk already. Fired in the thread that rotated. A crash in between
 * loses the event: who writes keys into journals compares them with {@link NodeIdentity#keys()} at start.
 */
public record KeysChanged(KeyChain keys) {}
