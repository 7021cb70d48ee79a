package org.demebook.planning;

import java.util.UUID;

/**
 * A partner that an animal might be paired with instead.
 *
 * @param animalId never to be shown
 * @param number studbook number
 * @param inbreedingOfYoung F of young of the two
 * @param keep how many young kept leave most gene diversity; 0 when each one lowers it
 */
public record NextBest(UUID animalId, String number, double inbreedingOfYoung, int keep) {}
