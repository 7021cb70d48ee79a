package org.demebook.programme;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.demebook.ancestry.Ancestries;
import org.demebook.consent.Action;
import org.demebook.consent.Consents;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.consent.Purpose;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.kinship.Pedigree;
import org.demebook.planning.Planner;
import org.demebook.programme.RecommendationView.Instead;
import org.jspecify.annotations.Nullable;

/** What a keeper may know of the animals that a plan pairs theirs with, and which others there are. */
@ApplicationScoped
class Partners {
    private static final int MOST_INSTEAD = 3;

    @Inject
    Ancestries ancestries;

    @Inject
    Consents consents;

    @Inject
    Keepers keepers;

    @Inject
    Planner planner;

    @Inject
    Clock clock;

    /**
     * @param collection what the collection is called; null where that is not shown
     * @param keepers sign-in names
     */
    record Whereabouts(@Nullable String collection, List<String> keepers) {
        static final Whereabouts NOT_SHOWN = new Whereabouts(null, List.of());
    }

    Seen seen(Standing by) {
        var at = clock.instant();
        return new Seen(by, PlanSight.of(ancestries, by, at), consents.lens(by, Purpose.PAIRING_COMPUTATION, at));
    }

    /**
     * @param without for each animal those that are no partners for it
     * @return by animal, at most three; of one that nothing is left for nothing
     */
    Map<UUID, List<Instead>> instead(
            Standing by, Map<UUID, Set<UUID>> without, LocalDate pairOn, double maximumInbreeding) {
        var question = new Planner.Question(maximumInbreeding, Composition.MOST_YOUNG, MOST_INSTEAD, pairOn);
        var instead = new HashMap<UUID, List<Instead>>();
        planner.nextBest(by, without, question)
                .forEach((id, best) -> instead.put(
                        id,
                        best.stream()
                                .map(next -> new Instead(next.number(), next.inbreedingOfYoung(), next.keep()))
                                .toList()));
        return instead;
    }

    /** What one asker may see at one moment; remembers what it told. */
    final class Seen {
        private final Standing by;
        private final PlanSight sight;
        private final Lens lens;
        private final Set<UUID> told = new HashSet<>();

        private Seen(Standing by, PlanSight sight, Lens lens) {
            this.by = by;
            this.sight = sight;
            this.lens = lens;
        }

        /** Whether the asker may see it, without its being shown. */
        boolean sees(UUID animalId) {
            return sight.number(animalId).isPresent();
        }

        /** @param agreed both sides accepted: then the number alone is granted for this */
        Optional<String> number(UUID animalId, boolean agreed) {
            var number = sight.number(animalId);
            if (number.isPresent()) {
                told.add(animalId);
                return number;
            }
            int row = sight.granted().row(animalId);
            return agreed
                            && row != Pedigree.UNKNOWN
                            && lens.may(sight.granted().subject(row), FieldGroup.IDENTITY, Action.READ)
                    ? Optional.of(sight.granted().number(row))
                    : Optional.empty();
        }

        Whereabouts whereabouts(UUID animalId) {
            int row = sight.granted().row(animalId);
            var collectionId = row == Pedigree.UNKNOWN ? null : sight.granted().collection(row);
            return collectionId == null || !lens.may(sight.granted().subject(row), FieldGroup.CUSTODY, Action.READ)
                    ? Whereabouts.NOT_SHOWN
                    : new Whereabouts(
                            keepers.label(by.populationId(), collectionId),
                            keepers.namesOf(by.populationId(), collectionId));
        }

        /** Writes down for their keepers what was shown. */
        void disclosed() {
            sight.disclosed(ancestries, told.stream());
            consents.disclosed(lens);
        }
    }
}
