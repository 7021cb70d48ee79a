package org.demebook.planning;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.demebook.ancestry.Snapshot;
import org.demebook.keeper.RegionDistances;
import org.demebook.planning.SeasonField.Barrier;
import org.demebook.planning.SeasonField.BarrierKind;
import org.demebook.planning.SeasonField.Place;
import org.jspecify.annotations.Nullable;

/**
 * Where animals live, as far as that may be used, and who may go where. Two of them that are equal answer everything alike.
 *
 * @param spots by the index of a place
 * @param placeOfRow of those of which places were wanted
 * @param regionOfRow of those whose region may be used
 * @param quarantine what keeps animals from going anywhere any more
 */
record Places(
        List<Spot> spots,
        Map<Integer, Integer> placeOfRow,
        Map<Integer, String> regionOfRow,
        RegionDistances distances,
        Optional<Barrier> quarantine) {

    /**
     * A place and what is known of it.
     *
     * @param region null: not stated, or not to be used for each of its animals
     * @param yours it is a collection of the asker's
     */
    record Spot(Place place, PairingTerms terms, @Nullable String region, boolean yours) {}

    /**
     * What may be used of where animals live.
     *
     * @param together whether it may be used in which collection the animal of a row lives
     * @param region whether its region may be used
     */
    interface Granted {
        boolean together(int row);

        boolean region(int row);
    }

    /** Builds them for some rows of a snapshot. */
    static Places of(
            Snapshot snapshot,
            int[] rows,
            Granted granted,
            Set<UUID> own,
            Map<UUID, PairingTerms> terms,
            Map<UUID, String> regions,
            RegionDistances distances,
            Optional<Barrier> quarantine) {
        var spots = new ArrayList<Spot>();
        var placeOfRow = new HashMap<Integer, Integer>();
        var regionOfRow = new HashMap<Integer, String>();
        var placeOfCollection = new HashMap<UUID, Integer>();
        for (int row : rows) {
            var collection = snapshot.collection(row);
            var region = collection == null || !granted.region(row) ? null : regions.get(collection);
            if (region != null) {
                regionOfRow.put(row, region);
            }
            if (collection == null || !granted.together(row)) {
                placeOfRow.put(row, spots.size());
                spots.add(new Spot(Place.ALONE, PairingTerms.NONE, region, false));
                continue;
            }
            var present = placeOfCollection.putIfAbsent(collection, spots.size());
            if (present == null) {
                placeOfRow.put(row, spots.size());
                spots.add(spot(collection, own, terms, region));
            } else {
                placeOfRow.put(row, present);
                var spot = spots.get(present);
                spots.set(present, region == null ? new Spot(spot.place, spot.terms, null, spot.yours) : spot);
            }
        }
        return new Places(spots, placeOfRow, regionOfRow, distances, quarantine);
    }

    private static Spot spot(UUID collection, Set<UUID> own, Map<UUID, PairingTerms> all, @Nullable String region) {
        var terms = all.getOrDefault(collection, PairingTerms.NONE);
        return new Spot(
                new Place(collection, terms.littersAtMost(), terms.malesAwayAtMost()),
                terms,
                region,
                own.contains(collection));
    }

    List<Place> all() {
        return spots.stream().map(Spot::place).toList();
    }

    int of(int row) {
        return placeOfRow.get(row);
    }

    /** Why an animal may not go from one to the other, were there time enough for its quarantine. */
    Optional<Barrier> apart(int from, int to) {
        return from == to ? Optional.empty() : apart(spots.get(from), spots.get(to));
    }

    /** Why an animal may not go from one to the other. */
    Optional<Barrier> between(int from, int to) {
        return from == to ? Optional.empty() : quarantine.or(() -> apart(from, to));
    }

    private Optional<Barrier> apart(Spot one, Spot other) {
        if (one.region == null || other.region == null) {
            return Optional.empty(); // nobody can say
        }
        return exchanged(one, other)
                .or(() -> exchanged(other, one))
                .or(() -> distances.between(one.region, other.region).flatMap(pair -> tooFar(one, pair)
                        .or(() -> tooFar(other, pair))
                        .or(() -> border(one, pair))
                        .or(() -> border(other, pair))));
    }

    private static Optional<Barrier> exchanged(Spot of, Spot with) {
        var regions = of.terms.exchangeWith();
        if (regions == null
                || regions.contains(with.region)
                || String.valueOf(of.region).equals(with.region)) {
            return Optional.empty();
        }
        return barrier(
                BarrierKind.REGION,
                of.yours
                        ? "you state with which regions your animals are exchanged, and that of the other is not among them"
                        : "one of the two collections exchanges no animals with the region of the other");
    }

    private static Optional<Barrier> tooFar(Spot of, RegionDistances.RegionPair pair) {
        var farthest = of.terms.farthestKilometres();
        if (farthest == null || pair.kilometres() <= farthest) {
            return Optional.empty();
        }
        return barrier(
                BarrierKind.DISTANCE,
                of.yours
                        ? "they live %s apart, farther than the %d km that you state"
                                .formatted(roughly(pair.kilometres()), farthest)
                        : "they live %s apart, farther than one of the two collections wants"
                                .formatted(roughly(pair.kilometres())));
    }

    private static Optional<Barrier> border(Spot of, RegionDistances.RegionPair pair) {
        if (!pair.border() || !Boolean.FALSE.equals(of.terms.mayCrossBorders())) {
            return Optional.empty();
        }
        return barrier(
                BarrierKind.BORDER,
                of.yours
                        ? "a border lies between them, and you state that your animals cross none"
                        : "a border lies between them, and one of the two collections lets its animals cross none");
    }

    private static Optional<Barrier> barrier(BarrierKind kind, String words) {
        return Optional.of(new Barrier(kind, words));
    }

    /** How far apart the animals of two rows live, in words; empty where that may not be used, or nobody stated it. */
    Optional<String> distance(int row, int other) {
        var one = regionOfRow.get(row);
        var another = regionOfRow.get(other);
        return one == null || another == null
                ? Optional.empty()
                : distances.between(one, another).map(pair -> roughly(pair.kilometres()));
    }

    /** To the next hundred kilometres: regions are large, and nearer it is nobody's to know. */
    private static String roughly(int kilometres) {
        long hundreds = Math.round(kilometres / 100.0);
        return hundreds == 0 ? "less than 100 km" : "about %d km".formatted(100 * hundreds);
    }
}
