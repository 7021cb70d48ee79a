/** Breeding: who is together with whom, what was seen of a female's cycle, and when her young are due. */
@NullMarked
package org.demebook.web.breeding;

import org.jspecify.annotations.NullMarked;
