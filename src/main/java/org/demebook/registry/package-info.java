/**
 * The register: populations and their animals, who bore and sired them, what they are marked with, how they died.
 *
 * <p>Knows nothing of how litters come about or how animals change hands; the rooms that do call in here. Doors: {@link
 * org.demebook.registry.Populations}, {@link org.demebook.registry.Animals}.
 */
@NullMarked
package org.demebook.registry;

import org.jspecify.annotations.NullMarked;
