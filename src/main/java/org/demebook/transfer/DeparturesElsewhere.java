package org.demebook.transfer;

import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.demebook.transfer.Departures.Departure;

/** When animals left collections otherwise than by a transfer or a dispute; a room that knows has a bean of this kind. */
public interface DeparturesElsewhere {
    /** Of some animals, one or more. */
    List<Departure> of(UUID populationId, Collection<UUID> animalIds);
}
