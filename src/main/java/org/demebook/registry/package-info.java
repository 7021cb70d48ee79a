/**
 * The register: populations and their animals, who bore and sired them, what they are marked with, how they died.
 *
 * <p>What is sent is held to the rules of {@link org.demebook.problem.Rule}: each {@link org.demebook.registry.Breach} has
 * its level, and what a keeper leaves as it is stands in {@link org.demebook.registry.LeftFindings} with the reason.
 *
 * <p>Knows nothing of how litters come about or how animals change hands; the rooms that do call in here, or tell what they
 * know of an animal's life through {@link org.demebook.registry.LifeEvents}. Doors: {@link
 * org.demebook.registry.Populations}, {@link org.demebook.registry.Animals}.
 */
@NullMarked
package org.demebook.registry;

import org.jspecify.annotations.NullMarked;
