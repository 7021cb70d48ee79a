package org.demebook.transfer;

import java.util.UUID;

/** Which females are gravid, told by a room that knows of breeding; without such a bean nothing is known. */
public interface GravidFemales {
    /** Whether she is gravid, as far as her keeper's records say. */
    boolean isGravid(UUID populationId, UUID animalId);
}
