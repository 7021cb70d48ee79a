/** Which animals to pair: partners for one, requests to keepers nobody names, and what a collection can bear. */
@NullMarked
package org.demebook.web.pairing;

import org.jspecify.annotations.NullMarked;
