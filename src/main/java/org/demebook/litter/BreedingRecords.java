package org.demebook.litter;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.util.List;
import java.util.OptionalInt;
import java.util.UUID;
import org.demebook.keeper.Standing;
import org.demebook.notation.RoughDate;
import org.demebook.registry.Breach;
import org.demebook.registry.Custody;

/** What all rooms that keep a {@link BreedingRecord} tell; where there is none, nothing is known. */
@ApplicationScoped
class BreedingRecords {
    @Inject
    @Any
    Instance<BreedingRecord> records;

    List<Mate> mates(UUID populationId, UUID damId, RoughDate born) {
        return records.stream()
                .flatMap(record -> record.mates(populationId, damId, born).stream())
                .toList();
    }

    List<Breach> check(Standing by, Custody dam, RoughDate born) {
        return records.stream()
                .flatMap(record -> record.check(by, dam, born).stream())
                .toList();
    }

    OptionalInt daysFromShed(UUID populationId, UUID damId, RoughDate born) {
        return records.stream()
                .map(record -> record.daysFromShed(populationId, damId, born))
                .filter(OptionalInt::isPresent)
                .findFirst()
                .orElse(OptionalInt.empty());
    }
}
