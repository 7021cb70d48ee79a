/**
 * How the trade writes things down: studbook numbers, dates as well as they are known, transponder codes, sexes, origins.
 *
 * <p>Values that read, check and write themselves; knows no room but this one.
 */
@NullMarked
package org.demebook.notation;

import org.jspecify.annotations.NullMarked;
