package org.demebook.diary;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.UUID;
import org.demebook.diary.CareRecord.Quarantine;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.registry.Quarantines;

/** The quarantines that were written down; those of an earlier keeper are theirs. */
@ApplicationScoped
class NotedQuarantines implements Quarantines {
    @Inject
    Keepers keepers;

    @Override
    public List<QuarantineSpan> of(Standing by, UUID animalId) {
        var own = keepers.collectionIds(by);
        return CareRecordRow.seen(by.populationId(), own, List.of(animalId)).stream()
                .filter(row -> own.contains(row.collectionId) && row.record instanceof Quarantine)
                .map(row -> (Quarantine) row.record)
                .map(noted -> new QuarantineSpan(noted.from(), noted.until(), noted.endedOn()))
                .toList();
    }
}
