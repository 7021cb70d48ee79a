/** Litters: written down at the rack, also without reception, read, and corrected the next morning. */
@NullMarked
package org.demebook.web.litter;

import org.jspecify.annotations.NullMarked;
