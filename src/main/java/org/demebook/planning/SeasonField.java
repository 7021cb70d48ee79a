package org.demebook.planning;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.ancestry.Snapshot;
import org.jspecify.annotations.Nullable;

/**
 * What there is to plan a season with, as one asker may know it: who may be paired on a day and who not, where they live as far
 * as that may be used, and who may go where. Rows are those of the snapshot. Immutable.
 *
 * <p>All words are for the asker: whoever else is told has to be looked at anew, or be told no more than the hindrance.
 */
public final class SeasonField {
    /**
     * @param place index of {@link #places}
     * @param notes what is worth a second look before it is paired
     */
    public record Candidate(int row, int place, List<String> notes) {}

    /**
     * An animal that would be a candidate if that were not.
     *
     * @param place index of {@link #places}
     */
    public record Hindered(int row, int place, Hindrance hindrance, String words) {}

    /**
     * Where animals live: a collection, or one animal alone of which it may not be used where it lives.
     *
     * @param collectionId null of an animal alone; never to be shown
     * @param littersAtMost litters that may be born there in the season; null: no limit
     * @param malesAwayAtMost males that may be away from there in the season; null: no limit
     */
    public record Place(
            @Nullable UUID collectionId,
            @Nullable Integer littersAtMost,
            @Nullable Integer malesAwayAtMost) {
        static final Place ALONE = new Place(null, null, null);
    }

    /** Why an animal may not go from one place to another, the first that holds. */
    public enum BarrierKind {
        /** It would have to be there already, for its quarantine to be over on the day: only what lives together is paired. */
        QUARANTINE("quarantine"),
        /** One of the two exchanges no animals with the region of the other. */
        REGION("region"),
        /** They are farther apart than one of the two wants. */
        DISTANCE("distance"),
        /** A border lies between them, and one of the two lets no animals cross it. */
        BORDER("border");

        private final String word;

        BarrierKind(String word) {
            this.word = word;
        }

        /** As it stands in answers. */
        public String word() {
            return word;
        }
    }

    /** @param words for the asker alone */
    public record Barrier(BarrierKind kind, String words) {}

    /** The barriers between places that are not the same. */
    interface Barriers {
        Optional<Barrier> between(int from, int to);
    }

    private final Snapshot snapshot;
    private final LocalDate pairOn;
    private final List<Candidate> females;
    private final List<Candidate> males;
    private final List<Hindered> hindered;
    private final List<Place> places;
    private final Barriers barriers;

    SeasonField(
            Snapshot snapshot,
            LocalDate pairOn,
            List<Candidate> females,
            List<Candidate> males,
            List<Hindered> hindered,
            List<Place> places,
            Barriers barriers) {
        this.snapshot = snapshot;
        this.pairOn = pairOn;
        this.females = List.copyOf(females);
        this.males = List.copyOf(males);
        this.hindered = List.copyOf(hindered);
        this.places = List.copyOf(places);
        this.barriers = barriers;
    }

    public Snapshot snapshot() {
        return snapshot;
    }

    /** The day on which animals are put together. */
    public LocalDate pairOn() {
        return pairOn;
    }

    /** Who may bear, rows ascending. */
    public List<Candidate> females() {
        return females;
    }

    /** Who may sire, rows ascending. */
    public List<Candidate> males() {
        return males;
    }

    /** Whose keepers would let them be paired, and who may not be, rows ascending. */
    public List<Hindered> hindered() {
        return hindered;
    }

    /** For the asker alone, why an animal that they see is no candidate; empty where there is nothing to say. */
    public Optional<String> inTheWay(int row) {
        var node = snapshot.node(row);
        return node != null
                ? Optional.of(
                        "it lives on another node (%s), and its keeper could not answer; agree with them, or plan with animals of this node"
                                .formatted(node))
                : hindered.stream()
                        .filter(one -> one.row() == row)
                        .map(Hindered::words)
                        .findFirst();
    }

    /** Of all candidates and hindered animals. */
    public List<Place> places() {
        return places;
    }

    /** Why an animal may not go from one place to another; empty where it may, and where it need not go. */
    public Optional<Barrier> barrier(int from, int to) {
        return from == to ? Optional.empty() : barriers.between(from, to);
    }
}
