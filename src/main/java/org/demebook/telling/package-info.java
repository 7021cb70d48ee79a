/**
 * What other nodes are told of the animals here, as far as their keepers granted it, and what this node is told of theirs.
 *
 * <p>What stands told equals what is granted: withdrawn within one look, which comes about once a second. What is told here
 * is kept nowhere but in the federated journals, so that whoever erases these has erased it. Method: docs/federation/telling.md.
 *
 * <p>Keepers of two nodes agree that an animal which each node registered is one through {@link
 * org.demebook.telling.SameAnimalsElsewhere}.
 */
@NullMarked
package org.demebook.telling;

import org.jspecify.annotations.NullMarked;
