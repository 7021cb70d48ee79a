/** What is written down at the rack: the young of a litter side by side with one tap each, and every kind of care record. */
@NullMarked
package org.demebook.web.rearing;

import org.jspecify.annotations.NullMarked;
