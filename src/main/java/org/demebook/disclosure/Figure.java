package org.demebook.disclosure;

import java.util.function.Predicate;

/**
 * A figure that may be published: a cell of a table or a total.
 *
 * <p>Figures of two releases with the same name cover the same base cells, as far as these are there.
 *
 * @param name says all that it covers, so that it is the same figure in another release
 * @param covers which base cells it sums
 */
public record Figure(String name, Predicate<String> covers) {}
