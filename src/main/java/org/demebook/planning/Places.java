package org.demebook.planning;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.IntPredicate;
import org.demebook.ancestry.Snapshot;
import org.demebook.planning.SeasonField.Barrier;
import org.demebook.planning.SeasonField.BarrierKind;
import org.demebook.planning.SeasonField.Place;

/** Where animals live, as far as that may be used, and who may go where. */
final class Places {
    private final List<Place> places = new ArrayList<>();
    private final Map<Integer, Integer> placeOfRow = new HashMap<>();
    private final Optional<Barrier> quarantine;

    /**
     * @param rows of which places are wanted
     * @param whereabouts the rows of which it may be used in which collection they live
     * @param quarantine what keeps animals from going anywhere any more
     */
    Places(Snapshot snapshot, int[] rows, IntPredicate whereabouts, Optional<Barrier> quarantine) {
        this.quarantine = quarantine;
        var placeOfCollection = new HashMap<UUID, Integer>();
        for (int row : rows) {
            var collection = snapshot.collection(row);
            placeOfRow.put(
                    row,
                    collection == null || !whereabouts.test(row)
                            ? add(Place.ALONE)
                            : placeOfCollection.computeIfAbsent(collection, id -> add(new Place(id, null, null))));
        }
    }

    private int add(Place place) {
        places.add(place);
        return places.size() - 1;
    }

    /** That it is too late to bring an animal from elsewhere. */
    static Optional<Barrier> quarantine(LocalDate pairOn, int daysOfQuarantine, LocalDate today) {
        return pairOn.minusDays(daysOfQuarantine).isBefore(today)
                ? Optional.of(new Barrier(
                        BarrierKind.QUARANTINE,
                        "an animal that arrives today has %d days of quarantine until %s, and the pairing is on %s"
                                .formatted(daysOfQuarantine, today.plusDays(daysOfQuarantine), pairOn)))
                : Optional.empty();
    }

    List<Place> all() {
        return places;
    }

    int of(int row) {
        return placeOfRow.get(row);
    }

    Optional<Barrier> between(int from, int to) {
        return quarantine;
    }
}
