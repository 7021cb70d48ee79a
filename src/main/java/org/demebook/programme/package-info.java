/**
 * The programme of a population: the season's plan as a coordinator has it computed and issues it, what it recommends for each
 * animal, what keepers answer, and what came of it. The arithmetic is in {@code season}, who may breed with whom in {@code
 * planning}.
 *
 * <p>Doors: {@link org.demebook.programme.Drafts}, {@link org.demebook.programme.SeasonPlans}, {@link
 * org.demebook.programme.Recommendations}, {@link org.demebook.programme.Answers}, {@link org.demebook.programme.AnswersHeard},
 * {@link org.demebook.programme.Outcomes}, {@link org.demebook.programme.Outlooks}.
 */
@NullMarked
package org.demebook.programme;

import org.jspecify.annotations.NullMarked;
