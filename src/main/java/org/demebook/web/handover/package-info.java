/**
 * Hand-over: what a keeper offers and is offered, how a buyer takes an animal over with a code, the sheet that goes with it, and
 * what happens when it is reported in two places.
 */
@NullMarked
package org.demebook.web.handover;

import org.jspecify.annotations.NullMarked;
