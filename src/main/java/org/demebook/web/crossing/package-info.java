/** Animals that go to, or come from, keepers on other nodes: to offer one, where it stands in words, and the receiver's answer. */
@NullMarked
package org.demebook.web.crossing;

import org.jspecify.annotations.NullMarked;
