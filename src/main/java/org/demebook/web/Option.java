package org.demebook.web;

/**
 * One of the values that a form offers.
 *
 * @param value as the API takes it
 * @param label as the keeper reads it
 */
public record Option(String value, String label) {
    /** Nothing is chosen. */
    public static Option none(String label) {
        return new Option("", label);
    }
}
