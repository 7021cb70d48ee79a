package org.demebook.programme;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.demebook.ancestry.Ancestries;
import org.demebook.ancestry.Snapshot;
import org.demebook.consent.Purpose;
import org.demebook.keeper.Standing;
import org.demebook.kinship.Pedigree;

/** Which animals of a plan the asker may see now: those of which number and parents are theirs to read for pairing. */
record PlanSight(Standing by, Instant at, Snapshot granted) {
    static PlanSight of(Ancestries ancestries, Standing by, Instant at) {
        return new PlanSight(by, at, ancestries.seen(by, Purpose.PAIRING_COMPUTATION, at));
    }

    Optional<String> number(UUID animalId) {
        int row = granted.row(animalId);
        return row != Pedigree.UNKNOWN && granted.isShown(row) && granted.isParentageShown(row)
                ? Optional.of(granted.number(row))
                : Optional.empty();
    }

    /** Both animals of a litter. */
    boolean shows(PlanDocument.Litter litter) {
        return number(litter.damId()).isPresent() && number(litter.sireId()).isPresent();
    }

    /** Writes down for their keepers that these animals are shown. */
    void disclosed(Ancestries ancestries, Stream<UUID> animalIds) {
        var rows = animalIds.filter(id -> number(id).isPresent()).mapToInt(granted::row);
        ancestries.disclosed(by, Purpose.PAIRING_COMPUTATION, at, granted, rows);
    }
}
