/**
 * The ancestry chart: a picture of who descends from whom as SVG, and the same as a text outline.
 *
 * <p>Drawn after the standardized pedigree nomenclature: Bennett et al. (1995), Am. J. Hum. Genet. 56: 745–752; Bennett, French,
 * Resta &amp; Lochner Doyle (2008), J. Genet. Couns. 17: 424–433. Both were read in their abstracts; the single symbols in
 * the AMA Manual of Style, 10th edition, which repeats them: square male, circle female, diamond unknown sex, slash deceased, plain
 * arrow the consultand, arrow with a P the proband. From memory: the double line of related parents, the slash running
 * from lower left to upper right, text to the lower right of the symbol, that a dashed line of descent stands for a relation that is not biological; the update of
 * 2022 (J. Genet. Couns.), which concerns people's gender, was not read.
 *
 * <p>Where this house departs from it, because a pedigree of a closely bred population is a net and not a tree:
 *
 * <ul>
 *   <li>an animal is drawn once, so partners may stand in different rows; their lines meet at a dot below both, instead of
 *       a line between neighbours;
 *   <li>a dashed line ends at somebody who <em>may</em> be the sire, and carries a question mark (no animal here is adopted);
 *   <li>a thick outline marks a founder, a dashed outline somebody who is there but not shown to this viewer.
 * </ul>
 *
 * <p>The animal whose chart it is has the consultand's plain arrow: it is asked about, nothing affects it, as a proband would be.
 *
 * <p>Knows no register, no framework and no other room; layout by the Eclipse Layout Kernel. Door: {@link
 * org.demebook.chart.AncestryChart}.
 */
@NullMarked
package org.demebook.chart;

import org.jspecify.annotations.NullMarked;
