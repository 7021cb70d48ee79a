package org.demebook.handover;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import java.util.UUID;
import org.demebook.keeper.Leaving;

/** The words of sheets that a keeper issued who left, and of those from collections that nobody acts for any more. */
@ApplicationScoped
class SheetsOfLeavers implements Leaving {
    @Override
    public void cleared(UUID populationId, UUID keeperId, Set<UUID> alone) {
        SheetWords.delete(
                "populationId = ?1 and sheetId in (select s.id from IssuedSheet s where s.populationId = ?1 and"
                        + " s.issuedBy = ?2)",
                populationId,
                keeperId);
        for (var collectionId : alone) {
            SheetWords.delete(
                    "populationId = ?1 and sheetId in"
                            + " (select s.id from IssuedSheet s where s.populationId = ?1 and s.fromCollectionId = ?2)",
                    populationId,
                    collectionId);
        }
    }
}
