/**
 * How the process comes up: the command line, the embedded database, the key for sign-in, the demo world.
 *
 * <p>Everything here runs before or around the server, never within a request. Door: {@link org.demebook.start.Main}.
 */
@NullMarked
package org.demebook.start;

import org.jspecify.annotations.NullMarked;
