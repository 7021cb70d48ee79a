/**
 * What nodes say to each other, and what follows from it: one node's part in one population, as a machine without network, clock,
 * threads or database, so that a simulation can run the very code.
 *
 * <p>A node writes its own journal and keeps copies of the others'. State is a fold over these entries and nothing else. Knows no
 * other room but {@code signing} and {@code merkle}. Door: {@link org.demebook.protocol.Participant}; the protocol in words:
 * docs/federation.
 */
@NullMarked
package org.demebook.protocol;

import org.jspecify.annotations.NullMarked;
