/**
 * The numeric core: inbreeding, kinship, gene diversity and founders of a pedigree given as arrays of ints.
 *
 * <p>Animals are the caller's row numbers. Knows nothing of registers, consent, dates or databases: it imports the JDK
 * only, reads no clock, logs nothing, and takes every seed from the caller. Equal births give bit-equal answers,
 * whatever the order in which they are told.
 *
 * <p>Door: {@link Pedigree}.
 */
@NullMarked
package org.demebook.kinship;

import org.jspecify.annotations.NullMarked;
