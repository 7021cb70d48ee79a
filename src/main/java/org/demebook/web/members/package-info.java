/** Who belongs to a population, how they come in, and where their collections are, as coarsely as they state it. */
@NullMarked
package org.demebook.web.members;

import org.jspecify.annotations.NullMarked;
