package org.demebook.registry;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

/** What another room knows to have happened to a living animal; a room that knows such things has a bean of this kind. */
public interface LifeEvents {
    /**
     * Something that happens to the living alone.
     *
     * @param what in the words of a sentence: "it was handed over"
     */
    record LifeEvent(LocalDate on, String what) {}

    /** What happened to it after a day, the earliest first; a few are enough. */
    List<LifeEvent> after(UUID populationId, UUID animalId, LocalDate day);
}
