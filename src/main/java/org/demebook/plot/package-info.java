/**
 * Plots as figures of geometry: what a page has to draw and to write beside it, prepared to the last coordinate.
 *
 * <p>Pure: knows no register, no framework, no language and no clock. Every word, number and date is written by what the caller
 * gives ({@link Caption}, {@link Numbers}, {@link Dates}), every colour by the style sheet {@code pages/plot.css}. The templates of
 * the same names in {@code templates/plot/} draw a plot and set its figures beside it as a table.
 *
 * <p>Doors: {@link HeatMap}, {@link Trend}, {@link Pyramid}, {@link Shares}, {@link Tradeoff}, {@link Growth}, {@link Lifeline}.
 */
@NullMarked
package org.demebook.plot;

import org.jspecify.annotations.NullMarked;
