/** What a population is: its name, its taxon, where it is from, and the figures of its biology with their sources. */
@NullMarked
package org.demebook.web.description;

import org.jspecify.annotations.NullMarked;
