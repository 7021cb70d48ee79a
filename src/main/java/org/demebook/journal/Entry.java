package org.demebook.journal;

import java.time.Instant;
import java.util.UUID;

/**
 * One line of a journal.
 *
 * @param seq 1, 2, 3 … without gap in its population
 * @param actorId the keeper who said so
 */
public record Entry(UUID populationId, String nodeCode, long seq, Instant recordedAt, UUID actorId) {}
