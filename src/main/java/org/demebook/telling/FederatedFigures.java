package org.demebook.telling;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import org.demebook.kinship.Skeleton;
import org.demebook.kinship.Skeleton.Birth;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Statement.AncestryTold;
import org.demebook.protocol.Statement.HoldingTold;
import org.demebook.protocol.Told;
import org.demebook.registry.Sire;

/**
 * A population as everybody was told of it, as bare births: what any node works out of the same heads, to the last bit. Animals are
 * numbered in the order of their names between nodes, and sums run in that order. Method: docs/methods/figures-between-nodes.md.
 */
final class FederatedFigures {
    private final Told told;
    private final SortedMap<AnimalId, SortedSet<AnimalId>> same = new TreeMap<>();
    private final Map<AnimalId, UUID> keys = new HashMap<>();

    private FederatedFigures(Told told) {
        this.told = told;
        told.ancestry().forEach((id, ancestry) -> {
            know(id);
            ancestry.dam().ifPresent(this::know);
            ancestry.sires().forEach(share -> know(share.sire()));
            new ToldDetail(ancestry).twin().ifPresent(this::know);
        });
        told.holdings().keySet().forEach(this::know);
        long rank = 0;
        for (var id : same.keySet()) {
            keys.put(id, new UUID(0, ++rank));
        }
    }

    /**
     * @param heads by node id, the entry up to which its journal is taken
     * @param told to everybody
     */
    static Skeleton skeleton(SortedMap<String, Long> heads, Told told) {
        var figures = new FederatedFigures(told);
        return new Skeleton(
                heads, figures.same.keySet().stream().map(figures::animal).toList(), List.of());
    }

    private void know(AnimalId id) {
        same.computeIfAbsent(canonical(id), any -> new TreeSet<>()).add(id);
    }

    private AnimalId canonical(AnimalId id) {
        return told.sameAs().getOrDefault(id, id);
    }

    private UUID key(AnimalId id) {
        return keys.get(canonical(id));
    }

    private Skeleton.Animal animal(AnimalId canonical) {
        var holdings = same.get(canonical).stream()
                .map(told.holdings()::get)
                .filter(holding -> holding != null)
                .toList();
        return new Skeleton.Animal(
                keys.get(canonical),
                birth(canonical),
                !holdings.isEmpty() && holdings.stream().allMatch(HoldingTold::alive));
    }

    /** Of one record, never of each a part: the smallest that names a parent, or was taken from the wild. */
    private Birth birth(AnimalId canonical) {
        return same.get(canonical).stream()
                .map(told.ancestry()::get)
                .filter(ancestry -> ancestry != null)
                .min(Comparator.comparingInt(FederatedFigures::silence).thenComparing(AncestryTold::animal))
                .map(this::birth)
                .orElseGet(Skeleton.OfUnknownParents::new);
    }

    private static int silence(AncestryTold ancestry) {
        if (ancestry.dam().isPresent() || !ancestry.sires().isEmpty()) {
            return 0;
        }
        return ancestry.founder() ? 1 : 2;
    }

    private Birth birth(AncestryTold ancestry) {
        var detail = new ToldDetail(ancestry);
        var twin = detail.twin().map(this::key).filter(of -> !of.equals(key(ancestry.animal())));
        if (twin.isPresent()) {
            return new Skeleton.Twin(twin.get());
        }
        var dam = ancestry.dam().map(this::key).orElse(null);
        var sire = detail.sire(this::key);
        if (sire instanceof Sire.Known known) {
            return new Skeleton.Young(known.sireId(), dam);
        } else if (sire instanceof Sire.Candidates several) {
            return new Skeleton.YoungOfOneOf(several.drawId(), candidates(several), dam);
        } else if (sire instanceof Sire.None none && dam != null) {
            return new Skeleton.Parthenogen(dam, none.kindOfFusion(), Double.parseDouble(none.secondDivision()));
        } else if (dam != null) {
            return new Skeleton.Young(null, dam);
        }
        return ancestry.founder() ? new Skeleton.Founder(0) : new Skeleton.OfUnknownParents();
    }

    /** Two that are the same animal count together. */
    private static List<Skeleton.Candidate> candidates(Sire.Candidates several) {
        var byMale = new TreeMap<UUID, Double>();
        several.candidates()
                .forEach(candidate ->
                        byMale.merge(candidate.sireId(), candidate.value().doubleValue(), Double::sum));
        return byMale.entrySet().stream()
                .map(entry -> new Skeleton.Candidate(entry.getKey(), Math.min(1, entry.getValue())))
                .toList();
    }
}
