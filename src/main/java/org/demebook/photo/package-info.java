/**
 * Photographs, with nothing left in them but the picture: of an animal, or of a litter.
 *
 * <p>Keeps pictures by the id of their subject, knows neither animals nor litters, and asks nobody whether they may look:
 * the room of the subject does, since who may see the subject may see its photographs. Door: {@link
 * org.demebook.photo.Photos}.
 */
@NullMarked
package org.demebook.photo;

import org.jspecify.annotations.NullMarked;
