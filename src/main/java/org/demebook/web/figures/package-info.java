/** The population in figures: how many live, what genes they have, and what becomes of these. */
@NullMarked
package org.demebook.web.figures;

import org.jspecify.annotations.NullMarked;
