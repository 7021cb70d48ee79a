package org.demebook.sheet;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.demebook.keeper.Leaving;
import org.demebook.keeper.Standing;

/** How the imports of a keeper went, and what was found in their sheets. */
@ApplicationScoped
class ImportsOfLeavers implements Leaving {
    @Override
    public List<String> inTheWay(Standing by, Set<UUID> alone) {
        return ImportRun.isRunning(by.populationId(), by.keeperId())
                ? List.of("An import of yours is at work: wait until it is done.")
                : List.of();
    }

    @Override
    public void cleared(UUID populationId, UUID keeperId, Set<UUID> alone) {
        ImportRun.delete("populationId = ?1 and keeperId = ?2", populationId, keeperId);
    }
}
