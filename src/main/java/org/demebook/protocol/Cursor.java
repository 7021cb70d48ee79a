package org.demebook.protocol;

/**
 * A place in a journal from where to ask.
 *
 * @param epoch changes when the journal's own node asked how far this one got: what was under way then is not taken in any more,
 *     since that node may have been told already that it never arrived
 * @param again whether it lies within what is held here, for what others gave as digests
 */
public record Cursor(String node, long after, long epoch, boolean again) {}
