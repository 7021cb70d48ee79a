/** What is due, late, expected, or waiting for the one who looks. */
@NullMarked
package org.demebook.web.today;

import org.jspecify.annotations.NullMarked;
