/** Animals: the list, one of them, where it comes from, how it is related, and what is found out about it later. */
@NullMarked
package org.demebook.web.animal;

import org.jspecify.annotations.NullMarked;
