/**
 * How long it takes: from a breeding sign to the birth or the hatching, and from a birth back to the conception and to the
 * males that may be the sire. Arithmetic on what was noted; every figure says where it comes from.
 *
 * <p>Knows no framework, no clock and no register: days and figures come in, windows and shares go out. Doors: {@link
 * org.demebook.gestation.DueWindow}, {@link org.demebook.gestation.CandidateSires}.
 */
@NullMarked
package org.demebook.gestation;

import org.jspecify.annotations.NullMarked;
