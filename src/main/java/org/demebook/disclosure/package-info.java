/**
 * Statistical disclosure control for tables of counts: which figures may be told, so that nobody learns what one
 * respondent contributed.
 *
 * <p>Knows neither animals nor keepers, only units that respondents contribute. One solver chooses what is withheld, the
 * other audits the choice. Doors: {@link org.demebook.disclosure.Suppression}, {@link org.demebook.disclosure.Audit}.
 */
@NullMarked
package org.demebook.disclosure;

import org.jspecify.annotations.NullMarked;
