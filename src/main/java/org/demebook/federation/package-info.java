/**
 * Populations that several nodes share: keeps this node's federated journals and its copies of the others', and keeps up with them.
 *
 * <p>The protocol itself is {@code protocol}, the way to another node {@code peering}; here both meet the database. Other rooms
 * say things between nodes through {@link org.demebook.federation.Federations}, act on what takes effect by a {@link
 * org.demebook.federation.Consequence}, and look after things now and then by a {@link org.demebook.federation.Regular}.
 */
@NullMarked
package org.demebook.federation;

import org.jspecify.annotations.NullMarked;
