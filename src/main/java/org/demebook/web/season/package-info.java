/** The season: the plan in force and what it asks of a keeper; drafts, answers and the years ahead for coordinators. */
@NullMarked
package org.demebook.web.season;

import org.jspecify.annotations.NullMarked;
