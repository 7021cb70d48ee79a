/**
 * Clutches in incubators: set point, readings, and what is too cool or too warm.
 *
 * <p>An incubation belongs to the collection that began it; whoever acts for that collection, or holds the female now, sees
 * it. When a clutch is due to hatch is computed from its laying, elsewhere. Door: {@link
 * org.demebook.incubation.Incubations}.
 */
@NullMarked
package org.demebook.incubation;

import org.jspecify.annotations.NullMarked;
