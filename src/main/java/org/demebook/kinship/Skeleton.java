package org.demebook.kinship;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A population as bare births: what its figures follow from, without a name, a date or a place. One machine writes it, any
 * other computes the {@link #figures}, and both get the same to the last bit, in whatever order the animals are listed.
 *
 * @param journalHeads by the code of a node's journal the entry up to which its births are in; handed on to the figures
 * @param animals each once, in any order
 * @param founderKinships pairs of founders whose kinship is known from DNA; 0 for all others
 */
public record Skeleton(
        SortedMap<String, Long> journalHeads, List<Animal> animals, List<FounderKinship> founderKinships) {

    /** @param alive whether it counts as one of the pool */
    public record Animal(UUID id, Birth birth, boolean alive) {}

    /** Where an animal comes from; as the methods of {@link PedigreeBuilder} have it. */
    public sealed interface Birth {}

    /** @param inbreeding in [0, 1], 0 unless known from DNA */
    public record Founder(double inbreeding) implements Birth {}

    /** Parents that nobody knows; it is not stated to be a founder. */
    public record OfUnknownParents() implements Birth {}

    /** Of one known parent at least. */
    public record Young(@Nullable UUID sireId, @Nullable UUID damId) implements Birth {}

    /**
     * By one of several males.
     *
     * @param drawId young of one draw and with the same candidates have the same male; null: each may have another
     * @param candidates together at most 1; the rest is the chance of a stranger
     */
    public record YoungOfOneOf(
            @Nullable UUID drawId,
            List<Candidate> candidates,
            @Nullable UUID damId) implements Birth {}

    /** @param probability in (0, 1] */
    public record Candidate(UUID sireId, double probability) {}

    /** @param secondDivisionShare y in [0, 1] */
    public record Parthenogen(UUID damId, Fusion fusion, double secondDivisionShare) implements Birth {}

    /** Identical with another, whose birth says the rest. */
    public record Twin(UUID ofId) implements Birth {}

    /** @param kinship in [0, 1] */
    public record FounderKinship(UUID founderId, UUID otherId, double kinship) {}

    /** Sorted, so that rows do not depend on how they were listed. */
    public Skeleton {
        journalHeads = new TreeMap<>(journalHeads);
        animals = animals.stream().sorted(Comparator.comparing(Animal::id)).toList();
        founderKinships = List.copyOf(founderKinships);
    }

    /**
     * The figures of the population. A pure function; the cost is that of {@link PedigreeBuilder#build}.
     *
     * @throws PedigreeLoop if an animal would be its own ancestor; its rows are places in {@link #animals}
     * @throws IllegalArgumentException if an animal is listed twice, or a parent is not listed
     */
    public SkeletonFigures figures(Convention convention) {
        return SkeletonFigures.of(this, pedigree().under(convention));
    }

    /** Rows are places in {@link #animals}. */
    public Pedigree pedigree() {
        return new Telling().pedigree();
    }

    /** Of the living, ascending. */
    int[] living() {
        return IntStream.range(0, animals.size())
                .filter(row -> animals.get(row).alive())
                .toArray();
    }

    private record Draw(UUID drawId, List<Candidate> candidates) {}

    private final class Telling {
        private final PedigreeBuilder builder = Pedigree.builder(animals.size());
        private final Map<UUID, Integer> rowOf = new HashMap<>(2 * animals.size());
        private final Map<Draw, Integer> males = new HashMap<>();

        Pedigree pedigree() {
            for (int row = 0; row < animals.size(); row++) {
                var id = animals.get(row).id();
                if (rowOf.put(id, row) != null) {
                    throw new IllegalArgumentException("animal " + id + " is listed twice");
                }
                builder.key(row, id);
            }
            for (int row = 0; row < animals.size(); row++) {
                tell(row, animals.get(row).birth());
            }
            for (var pair : founderKinships) {
                builder.founderKinship(row(pair.founderId()), row(pair.otherId()), pair.kinship());
            }
            return builder.build();
        }

        private void tell(int row, Birth birth) {
            if (birth instanceof Founder founder) {
                builder.founder(row, founder.inbreeding());
            } else if (birth instanceof Young young) {
                builder.young(row, row(young.sireId()), row(young.damId()));
            } else if (birth instanceof YoungOfOneOf young) {
                builder.young(row, male(young), row(young.damId()));
            } else if (birth instanceof Parthenogen young) {
                builder.parthenogen(row, row(young.damId()), young.fusion(), young.secondDivisionShare());
            } else if (birth instanceof Twin twin) {
                builder.twin(row, row(twin.ofId()));
            } else {
                builder.unknownParents(row);
            }
        }

        private int male(YoungOfOneOf young) {
            var candidates = new ArrayList<>(young.candidates());
            candidates.sort(Comparator.comparing(Candidate::sireId));
            return young.drawId() == null
                    ? newMale(candidates)
                    : males.computeIfAbsent(new Draw(young.drawId(), candidates), draw -> newMale(candidates));
        }

        private int newMale(List<Candidate> candidates) {
            return builder.unknownSire(
                    candidates.stream()
                            .mapToInt(candidate -> row(candidate.sireId()))
                            .toArray(),
                    candidates.stream().mapToDouble(Candidate::probability).toArray());
        }

        private int row(@Nullable UUID id) {
            if (id == null) {
                return Pedigree.UNKNOWN;
            }
            var row = rowOf.get(id);
            if (row == null) {
                throw new IllegalArgumentException("animal " + id + " is named and not listed");
            }
            return row;
        }
    }
}
