package org.demebook.planning;

import org.jspecify.annotations.Nullable;

/**
 * How the tests of an animal stand on the day of a pairing, for one asker.
 *
 * @param onHold why it is on hold; null where its tests are in date
 */
record TestWords(@Nullable String onHold) {
    static final TestWords IN_DATE = new TestWords(null);
}
