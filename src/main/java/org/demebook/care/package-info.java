/**
 * What a keeper has to do, and by when: care tasks, collected from the rooms that know why (each a {@link
 * org.demebook.care.CareTaskSource}), with what the keeper did about them; and the calendar that shows them.
 *
 * <p>Knows no reason for a task but the keeper's own. A task is not stored: it is there as long as its source gives it.
 * Door: {@link org.demebook.care.CareTasks}.
 */
@NullMarked
package org.demebook.care;

import org.jspecify.annotations.NullMarked;
