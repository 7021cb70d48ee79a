package org.demebook.planning;

/**
 * Why an animal is not paired on a day.
 *
 * @param words for the asker alone: another may not be told as much, or may be told more
 */
record Objection(Hindrance hindrance, String words) {}
