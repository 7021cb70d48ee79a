/**
 * What can go wrong, said so that a keeper can act on it: every problem type (RFC 9457), and the one exception.
 *
 * <p>Knows nothing of HTTP and nothing of any other room. Door: {@link org.demebook.problem.Refusal}.
 */
@NullMarked
package org.demebook.problem;

import org.jspecify.annotations.NullMarked;
