/**
 * Leaving a population: a keeper takes everything out as an archive, and then their own out of the register. What is the animals'
 * stays.
 *
 * <p>Every room takes out what it has ({@link org.demebook.keeper.Leaving}); this one puts it in order. Doors: {@link
 * org.demebook.leaving.Erasures}, {@link org.demebook.leaving.MyArchive}.
 */
@NullMarked
package org.demebook.leaving;

import org.jspecify.annotations.NullMarked;
