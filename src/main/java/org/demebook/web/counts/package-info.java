/** The published counts, for everybody; and for members what protects them, for coordinators how they are released. */
@NullMarked
package org.demebook.web.counts;

import org.jspecify.annotations.NullMarked;
