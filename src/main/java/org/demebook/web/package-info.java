/**
 * The pages: what keepers see and tap. They stand on the same doors as the API and decide nothing themselves; a page's address
 * is that of the same thing in the API without {@code /api/v1}.
 *
 * <p>This folder is the frame: {@link Pages} shows a page, {@link Forms} takes what was typed, {@link Visit} is what every page
 * knows of who looks at it. Each folder below is a page or a few that belong together, with its words in a message bundle of its
 * own. Nobody imports this room.
 */
@NullMarked
package org.demebook.web;

import org.jspecify.annotations.NullMarked;
