/** What keepers share, with whom, what others see of it now, and who looked; and how one leaves. */
@NullMarked
package org.demebook.web.sharing;

import org.jspecify.annotations.NullMarked;
