package org.demebook.chart;

import java.util.List;

/**
 * Where everything stands.
 *
 * @param animals upper left corner of each animal's symbol and strip
 * @param bonds lines of each couple
 */
record Places(double width, double height, List<Point> animals, List<Bond> bonds) {
    /**
     * The lines of a couple.
     *
     * @param dot where they meet
     * @param fromParents for each of {@link Couple#parents()}, from the lower edge of its box to the dot
     * @param toYoung for each of {@link Couple#young()}, from the dot to the upper edge of its box
     */
    record Bond(Point dot, List<List<Point>> fromParents, List<List<Point>> toYoung) {}
}
