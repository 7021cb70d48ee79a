package org.demebook.planning;

import java.time.YearMonth;
import java.util.SortedMap;
import java.util.UUID;

/**
 * Who stands behind the pseudonyms that were told for an animal; never to be shown.
 *
 * @param animal its studbook number
 * @param collectionId that holds it
 * @param month for which the pseudonyms stand
 * @param partners by pseudonym; whose grant has ended is not among them
 */
public record ProposedPartners(
        UUID animalId, String animal, UUID collectionId, YearMonth month, SortedMap<String, UUID> partners) {}
