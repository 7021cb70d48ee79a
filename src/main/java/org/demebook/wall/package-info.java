/**
 * The second wall: PostgreSQL itself gives a request no row that its asker may not see, whatever the code above asks for.
 *
 * <p>The first wall is {@code consent}: it decides to the field, for a purpose, at a moment. This one is coarser and stands behind it:
 * row-level security on everything that a keeper wrote or that tells of their animals (migration V14, decision 13). Door: {@link
 * org.demebook.wall.Wall}.
 */
@NullMarked
package org.demebook.wall;

import org.jspecify.annotations.NullMarked;
