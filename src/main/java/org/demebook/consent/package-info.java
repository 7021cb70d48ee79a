/**
 * Consent: what the keepers of a collection let others see, and do with it; whatever nobody granted is denied.
 *
 * <p>The parties of a record are collections; who acts for one of them sees its own records whole, everybody else what every
 * party has granted. Knows nothing of the register: what animals there are it asks of {@link
 * org.demebook.consent.AnimalNumbers}. Doors: {@link org.demebook.consent.Consents} (may this be seen, and that it was), {@link
 * org.demebook.consent.Grants} (giving and taking back), {@link org.demebook.consent.AgreedGrants} (given by two sides at once).
 */
@NullMarked
package org.demebook.consent;

import org.jspecify.annotations.NullMarked;
