/**
 * Who this node is, who the other nodes are, and how one talks to them safely.
 *
 * <p>Knows nothing of journals or animals. Node keys and a TLS key on disk, peers whom an administrator admitted by comparing
 * fingerprints, TLS with pinned keys on a port of its own, requests that say by signature who asks. What is said is a {@link
 * org.demebook.peering.Conversation}, which another room holds. Doors: {@link org.demebook.peering.Node}, {@link
 * org.demebook.peering.Peers}, {@link org.demebook.peering.PeerClient}. The wire: docs/federation/transport.md.
 */
@NullMarked
package org.demebook.peering;

import org.jspecify.annotations.NullMarked;
