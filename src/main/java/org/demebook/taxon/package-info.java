/**
 * The biology of a population's taxon in figures: what checks, predictions and prompts reckon with. Each may be edited, and
 * says where it comes from.
 *
 * <p>Holds values; that they belong to a population is the registry's. Door: {@link org.demebook.taxon.TaxonProfile}.
 */
@NullMarked
package org.demebook.taxon;

import org.jspecify.annotations.NullMarked;
