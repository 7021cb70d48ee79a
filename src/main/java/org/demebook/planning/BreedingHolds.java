package org.demebook.planning;

import static org.demebook.problem.ProblemType.ANIMAL_DEAD;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NOT_ON_HOLD;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.demebook.ancestry.Snapshot;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.kinship.Pedigree;
import org.demebook.planning.OnHold.Basis;
import org.demebook.planning.PlanningFacts.BreedingHoldLifted;
import org.demebook.planning.PlanningFacts.BreedingHoldSet;
import org.demebook.problem.Refusal;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.registry.Custody;
import org.demebook.registry.Localities;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/**
 * Which animals are on hold: not to be bred for now. An animal without a sire is, and one whose own claim or pedigree, as far as
 * the asker sees it, speaks of another locality or of none that is sure, until a coordinator lifts the hold; any other is when
 * its holder or a coordinator says so. What follows from the parentage or from a claim is never stored.
 */
@ApplicationScoped
public class BreedingHolds {
    @Inject
    Journal journal;

    @Inject
    Animals animals;

    @Inject
    Localities localities;

    @Inject
    Keepers keepers;

    /** An animal with the last word on it. */
    private record Known(Custody animal, boolean fatherless, boolean inDoubt, Optional<BreedingHold> word) {
        boolean onHold() {
            return word.map(said -> said.onHold).orElse(fatherless || inDoubt);
        }
    }

    /** Refuses with MISTYPED_NUMBER or NO_SUCH_ANIMAL. */
    @Transactional
    public BreedingHoldView get(Standing by, String number) {
        return view(by, known(by, number));
    }

    /** Sets it on hold, or gives another reason; by its holder or a coordinator. The same word again changes nothing. */
    @Transactional
    public BreedingHoldView set(Standing by, String number, HoldWord said) {
        journal.open(by.populationId());
        var known = known(by, number);
        var animal = known.animal();
        var last = known.word().orElse(null);
        requireSay(by, animal);
        if (animal.died() != null) {
            throw new Refusal(ANIMAL_DEAD, "%s died on %s.".formatted(animal.number(), animal.died()));
        }
        if (last != null && last.onHold && !mayChange(by, last)) {
            throw new Refusal(
                    NOT_ALLOWED,
                    "%s is on hold already, by the word of somebody else; only they and coordinators change it."
                            .formatted(animal.number()));
        }
        if (last == null || !last.onHold || !last.reason.equals(said.reason())) {
            journal.record(
                    by.populationId(),
                    by.keeperId(),
                    new BreedingHoldSet(animal.id(), said.reason(), last == null ? null : last.revision));
        }
        return get(by, number);
    }

    /**
     * Lets it breed again; by a coordinator, or by its holder who set it on hold. What has no sire is a coordinator's to
     * decide. Refuses with NOT_ON_HOLD.
     */
    @Transactional
    public BreedingHoldView lift(Standing by, String number, HoldWord said) {
        journal.open(by.populationId());
        var known = known(by, number);
        var animal = known.animal();
        var last = known.word().orElse(null);
        requireSay(by, animal);
        if (!known.onHold()) {
            throw new Refusal(NOT_ON_HOLD, "%s is not on hold; there is nothing to lift.".formatted(animal.number()));
        }
        if (!by.isCoordinator() && known.fatherless()) {
            throw new Refusal(
                    NOT_ALLOWED,
                    "%s has no sire, so it carries nothing that its dam lacks. Ask a coordinator whether it is to breed all the same."
                            .formatted(animal.number()));
        }
        if (!by.isCoordinator() && known.inDoubt()) {
            throw new Refusal(
                    NOT_ALLOWED,
                    "%s, or an ancestor, is claimed to be of another locality, or of none that is sure. Correct the claim if it is wrong; else ask a coordinator whether it is to breed all the same."
                            .formatted(animal.number()));
        }
        if (last != null && !mayChange(by, last)) {
            throw new Refusal(
                    NOT_ALLOWED,
                    "%s is on hold by the word of somebody else; ask them, or a coordinator, to lift it."
                            .formatted(animal.number()));
        }
        journal.record(
                by.populationId(),
                by.keeperId(),
                new BreedingHoldLifted(animal.id(), said.reason(), last == null ? null : last.revision));
        return get(by, number);
    }

    private static boolean mayChange(Standing by, BreedingHold word) {
        return by.isCoordinator() || word.statedBy.equals(by.keeperId());
    }

    private void requireSay(Standing by, Custody animal) {
        if (!by.isCoordinator() && !isHolder(by, animal)) {
            throw new Refusal(
                    NOT_ALLOWED,
                    "Whether %s is on hold is said by who holds it and by coordinators; ask one of them."
                            .formatted(animal.number()));
        }
    }

    private boolean isHolder(Standing by, Custody animal) {
        return animal.collectionId() != null
                && keepers.actsFor(by.populationId(), by.keeperId(), animal.collectionId());
    }

    private Known known(Standing by, String number) {
        var animal =
                animals.standsFor(by.populationId(), animals.custody(by, number).id());
        var records = animals.recordsOf(by.populationId(), animal.id());
        var stated = animals.views(by, List.copyOf(records));
        return new Known(
                animal,
                fatherless(stated, animal),
                localities.isInDoubt(by, animal.id()),
                BreedingHold.last(by.populationId(), records));
    }

    /** As its own record says; where that names no parents, as another record of the same animal does. */
    private static boolean fatherless(List<AnimalView> records, Custody animal) {
        return records.stream()
                .filter(record -> record.dam() != null || !record.sire().kind().equals("unknown"))
                .min((one, other) ->
                        Boolean.compare(other.id().equals(animal.id()), one.id().equals(animal.id())))
                .map(record -> record.sire().kind().equals("none"))
                .orElse(false);
    }

    private BreedingHoldView view(Standing by, Known known) {
        var word = known.word().orElse(null);
        boolean maySee = by.isCoordinator() || isHolder(by, known.animal());
        return new BreedingHoldView(
                known.animal().number(),
                known.onHold(),
                basis(known, word),
                word == null || !maySee ? null : word.reason,
                word == null ? null : word.statedAt);
    }

    private static @Nullable String basis(Known known, @Nullable BreedingHold word) {
        if (word != null) {
            return word.onHold ? Basis.STATED.word() : "lifted";
        }
        if (known.fatherless()) {
            return Basis.NO_SIRE.word();
        }
        return known.inDoubt() ? Basis.LOCALITY.word() : null;
    }

    /** The animals of a snapshot that are on hold, by row, as the asker may know it. O(living) and one query. */
    @WholeRegister
    @Transactional
    Map<Integer, OnHold> in(Standing by, Snapshot snapshot) {
        var held = new HashMap<Integer, OnHold>();
        var inDoubt = ofDoubtfulLocality(by, snapshot);
        for (int row : snapshot.living()) {
            if (snapshot.fatherless(row)) {
                held.put(row, OnHold.FATHERLESS);
            } else if (inDoubt.get(row)) {
                held.put(row, OnHold.OF_DOUBTFUL_LOCALITY);
            }
        }
        var own = keepers.collectionIds(by);
        for (var word : BreedingHold.of(by.populationId())) {
            int row = snapshot.row(word.animalId);
            if (row != Pedigree.UNKNOWN && word.onHold) {
                boolean maySee = by.isCoordinator() || own.contains(snapshot.collection(row));
                held.put(row, new OnHold(Basis.STATED, maySee ? word.reason : null));
            } else {
                held.remove(row);
            }
        }
        return held;
    }

    /** As far as the asker sees the animals that it is claimed of, and who descends from them. */
    private BitSet ofDoubtfulLocality(Standing by, Snapshot snapshot) {
        var claimed = new BitSet(snapshot.size());
        for (var id : localities.inDoubt(by.populationId())) {
            int row = snapshot.row(id);
            if (row != Pedigree.UNKNOWN && snapshot.isShown(row)) {
                claimed.set(row);
            }
        }
        return snapshot.withDescendants(claimed);
    }
}
