package org.demebook.ancestry;

import java.util.List;
import org.demebook.consent.Action;
import org.demebook.consent.FieldGroup;
import org.demebook.registry.PedigreeRow;

/** Snapshots of records that a test made up, for tests of rooms that compute on snapshots. */
public final class SnapshotOf {
    private SnapshotOf() {}

    /** Whether something of the animal of a record is granted to an asker. */
    public interface Granted {
        boolean may(int row, FieldGroup fieldGroup, Action action);
    }

    /** @param records in the order of their numbers, none of which stands for another */
    public static Snapshot whole(List<PedigreeRow> records) {
        return Snapshot.of(1, records);
    }

    public static Snapshot seen(Snapshot whole, Granted granted) {
        return whole.as(Sight.of(whole.size(), granted::may));
    }
}
