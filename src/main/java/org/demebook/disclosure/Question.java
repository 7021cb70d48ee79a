package org.demebook.disclosure;

import org.demebook.disclosure.Rules.Need;

/**
 * Something that nobody may find out too well: a figure, or the change of one between two releases.
 *
 * @param subject what it is, to be read by people
 * @param figure name of the figure
 * @param plus variables that are added
 * @param minus variables that are taken off
 * @param value true value
 * @param need how far from it the bounds have to stay
 */
record Question(String subject, String figure, int[] plus, int[] minus, int value, Need need) {
    /** What the question answers in a possible world. */
    long in(long[] world) {
        long value = 0;
        for (int variable : plus) {
            value += world[variable];
        }
        for (int variable : minus) {
            value -= world[variable];
        }
        return value;
    }
}
