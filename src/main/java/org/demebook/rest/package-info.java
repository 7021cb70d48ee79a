/**
 * The manners that every resource shares: problems (RFC 9457), repeated requests (Idempotency-Key), revisions (ETag and
 * If-Match), pages (cursor and Link), and what the contract says of them.
 *
 * <p>Knows nothing of animals and keepers. Door: {@link org.demebook.rest.Once} for POST, {@link
 * org.demebook.rest.Revision} for changes, {@link org.demebook.rest.Page} for lists.
 */
@NullMarked
package org.demebook.rest;

import org.jspecify.annotations.NullMarked;
