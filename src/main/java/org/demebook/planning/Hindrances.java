package org.demebook.planning;

import java.util.Map;

/**
 * What is known against animals, by row, as one asker may know it.
 *
 * @param resting females that rest, or may
 * @param daysBetweenLitters usual from birth to birth
 * @param tests of those of whose tests anything may be used
 */
record Hindrances(
        Map<Integer, OnHold> held, Map<Integer, Rest> resting, int daysBetweenLitters, Map<Integer, TestWords> tests) {
    /** Nothing but that they are on hold is looked at. */
    static Hindrances of(Map<Integer, OnHold> held) {
        return new Hindrances(held, Map.of(), 0, Map.of());
    }
}
