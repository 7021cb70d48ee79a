package org.demebook.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.demebook.ancestry.Snapshot;
import org.demebook.consent.Action;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.planning.SeasonField.Barrier;
import org.demebook.taxon.TaxonProfile;
import org.jspecify.annotations.Nullable;

/**
 * What one asker may know of the population, and which of it may be proposed to them, for a day of pairing.
 *
 * @param places by row, and what lies between them
 * @param lens of the asker, for pairing
 */
record Sighted(
        Snapshot snapshot, OwnAnimals own, Candidates candidates, Places places, Lens lens, TaxonProfile profile) {

    /** Whether two live apart, for all that the asker may know, one of them here, and one may go to the other if there is time. */
    boolean mayMeet(int dam, int sire) {
        return !(livesElsewhere(dam) && livesElsewhere(sire))
                && candidates.apart(dam, sire)
                && barrier(dam, sire).isEmpty();
    }

    boolean livesElsewhere(int row) {
        return snapshot.node(row) != null;
    }

    /** Why none of the two may go to the other, however much time there is. */
    Optional<Barrier> barrier(int row, int other) {
        return places.apart(places.of(row), places.of(other));
    }

    /**
     * With whom an animal lives that is not the asker's, as far as that may be told: never who it is.
     *
     * @param partner that it is to be paired with
     */
    @Nullable
    String keptBy(int row, int partner) {
        if (own.contains(row)) {
            return null;
        }
        var node = snapshot.node(row);
        if (node != null) {
            return "a keeper on another node (%s)".formatted(node);
        }
        var words = new ArrayList<>(List.of("a keeper"));
        places.distance(row, partner)
                .map(distance -> distance + (own.contains(partner) ? " away" : " from the other"))
                .ifPresent(words::add);
        if (TestWords.IN_DATE.equals(candidates.known().tests().get(row))) {
            words.add("tests in date");
        }
        return String.join(", ", words);
    }

    /** Has the lens decide again on what is told of these animals beside number and parents, for its keepers to read of. */
    void lookAgain(Lens lens, IntStream rows) {
        rows.filter(row -> !own.contains(row)).forEach(row -> {
            if (candidates.known().tests().containsKey(row)) {
                lens.may(snapshot.subject(row), FieldGroup.HEALTH, Action.COMPUTE);
            }
            if (places.regionOfRow().containsKey(row)) {
                lens.may(snapshot.subject(row), FieldGroup.COARSE_PLACE, Action.COMPUTE);
            }
        });
    }
}
