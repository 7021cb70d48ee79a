/**
 * Spreadsheets: what keepers have in lists of their own comes into the register, and goes out again, in one and the same
 * set of columns.
 *
 * <p>Decides nothing about animals: the rules are the register's. Doors: {@link org.demebook.sheet.Imports}, {@link
 * org.demebook.sheet.Exports}.
 */
@NullMarked
package org.demebook.sheet;

import org.jspecify.annotations.NullMarked;
