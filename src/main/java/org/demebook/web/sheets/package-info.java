/** Sheets: what comes in from a spreadsheet, mended in place where it is wrong, and what goes out. */
@NullMarked
package org.demebook.web.sheets;

import org.jspecify.annotations.NullMarked;
