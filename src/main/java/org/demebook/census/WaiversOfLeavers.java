package org.demebook.census;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.keeper.Leaving;

/** Who left has waived nothing. */
@ApplicationScoped
class WaiversOfLeavers implements Leaving {
    @Override
    public void left(Entry entry, UUID keeperId, Set<UUID> shared) {
        CountWaiver.deleteById(new CountWaiver.Key(entry.populationId(), keeperId));
    }
}
