package org.demebook.litter;

import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_SUCH_LITTER;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.consent.Action;
import org.demebook.consent.Consents;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.consent.Purpose;
import org.demebook.consent.Subject;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;
import org.demebook.registry.Animals;
import org.demebook.registry.Offspring;
import org.demebook.registry.Sight;
import org.demebook.registry.Twins;
import org.demebook.rest.Page;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/** Which litters an asker sees, and how: the only place where a row becomes a view. */
@ApplicationScoped
class SeenLitters {
    /** A litter is seen by those who act for the collection that it was born in, and by those who hold its dam now. */
    private static final String SEEN = Sight.writtenOrHeld("damId");

    @Inject
    Consents consents;

    @Inject
    Clock clock;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Sight sight;

    @Inject
    Offspring offspring;

    @Inject
    Twins twins;

    /** Refuses with NO_SUCH_LITTER alike when there is none and when it is not for the asker to see. */
    Optional<Litter> find(Standing by, UUID litterId) {
        var parameters = sight.parameters(by);
        parameters.put("id", litterId);
        return Litter.<Litter>find("populationId = :population and id = :id and " + SEEN, parameters)
                .firstResultOptional();
    }

    Litter require(Standing by, UUID litterId) {
        return find(by, litterId)
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_LITTER, "There is no litter %s among those that you may see.".formatted(litterId)));
    }

    /** The same of those who act for the collection that it was born in; refuses the others with NOT_ALLOWED. */
    Litter requireOwn(Standing by, UUID litterId) {
        var litter = require(by, litterId);
        if (!isOwn(by, litter)) {
            throw new Refusal(NOT_ALLOWED, "Only who registered the litter does this; tell them what you know.");
        }
        return litter;
    }

    LitterView view(Standing by, Litter litter) {
        return views(by, List.of(litter)).get(0);
    }

    /** @param damIds only those of this dam; null: of any */
    Page<LitterView> page(Standing by, @Nullable Set<UUID> damIds, @Nullable String after, int limit) {
        var where = new StringBuilder("populationId = :population and " + SEEN);
        var parameters = sight.parameters(by);
        if (damIds != null) {
            where.append(" and damId in :dam");
            parameters.put("dam", damIds);
        }
        if (after != null) {
            where.append(" and id < :after");
            parameters.put("after", Page.id(after));
        }
        List<Litter> read = Litter.<Litter>find(where + " order by id desc", parameters)
                .page(0, limit + 1)
                .list();
        return Page.of(views(by, read), limit, litter -> litter.id().toString());
    }

    List<LitterView> bornSince(Standing by, LocalDate day) {
        var parameters = sight.parameters(by);
        parameters.put("day", day);
        return views(
                by,
                Litter.list(
                        "populationId = :population and bornLatest >= :day and " + SEEN + " order by id desc",
                        parameters));
    }

    List<LitterVersionView> versions(Standing by, Litter litter) {
        var versions = LitterVersion.of(by.populationId(), litter.id);
        Map<UUID, String> names = isOwn(by, litter)
                ? keepers.names(
                        versions.stream().map(version -> version.statedBy).collect(Collectors.toSet()))
                : Map.of();
        return versions.stream()
                .map(version -> version.view(names.get(version.statedBy)))
                .toList();
    }

    /** The outcomes of the other litters of the population; of the asker's own alone where few collections bred. */
    @WholeRegister
    List<Outcome> othersThan(Standing by, Litter litter, int fewestCollections) {
        var lens = consents.lens(by, Purpose.PEDIGREE_VIEW, clock.instant());
        var others = Litter.<Litter>list("populationId = ?1 and id <> ?2", by.populationId(), litter.id).stream()
                .filter(other -> isCounted(lens, other))
                .toList();
        long collections =
                others.stream().map(other -> other.collectionId).distinct().count();
        if (collections < fewestCollections) {
            var own = keepers.collectionIds(by);
            others = others.stream()
                    .filter(other -> own.contains(other.collectionId))
                    .toList();
        }
        return others.stream().map(other -> other.outcome).toList();
    }

    /** Whether its keepers let the asker compute with what came of it. */
    private static boolean isCounted(Lens lens, Litter other) {
        var subject = new Subject(other.damId, Set.of(other.collectionId));
        return lens.may(subject, FieldGroup.BREEDING_RESULTS, Action.COMPUTE)
                || lens.may(subject, FieldGroup.BREEDING_RESULTS, Action.READ);
    }

    /** Whether the asker acts for the collection that it was born in. */
    boolean isOwn(Standing by, Litter litter) {
        return keepers.actsFor(by.populationId(), by.keeperId(), litter.collectionId);
    }

    private List<LitterView> views(Standing by, List<Litter> litters) {
        var parents = new HashSet<UUID>();
        litters.forEach(litter -> {
            parents.add(litter.damId);
            parents.addAll(litter.sire.animalIds());
        });
        var numbers = animals.numbers(by.populationId(), parents);
        var ids = litters.stream().map(litter -> litter.id).collect(Collectors.toSet());
        var young = offspring.numbersOfLitters(by.populationId(), ids);
        var pairs = twins.ofLitters(by.populationId(), ids);
        return litters.stream()
                .map(litter -> litter.view(
                        numbers, young.getOrDefault(litter.id, List.of()), pairs.getOrDefault(litter.id, List.of())))
                .toList();
    }
}
