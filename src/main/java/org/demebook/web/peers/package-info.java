/** Other nodes, for administrators: who this one is to them, whom it talks with, and how it stands with each shared population. */
@NullMarked
package org.demebook.web.peers;

import org.jspecify.annotations.NullMarked;
