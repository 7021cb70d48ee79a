package org.demebook.web.figures;

/**
 * A figure as it is told.
 *
 * @param id of the sentence that says what it means
 * @param value empty where there is none
 * @param range from where to where it may be, or what else stands beside it; empty where nothing does
 * @param meaning what it is, of what it is measured, in which range it lies
 */
public record Told(String id, String name, String value, String range, String meaning) {}
