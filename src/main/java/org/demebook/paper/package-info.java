/**
 * Pages as paper: well-formed XHTML as a PDF with its typeface inside, and a QR code as a drawing.
 *
 * <p>Knows nothing of what the pages say, and fetches nothing: what a page shows stands in the page. Door: {@link
 * org.demebook.paper.Paper}.
 */
@NullMarked
package org.demebook.paper;

import org.jspecify.annotations.NullMarked;
