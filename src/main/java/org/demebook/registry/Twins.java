package org.demebook.registry;

import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;
import static org.demebook.problem.ProblemType.TWINS_NOT_POSSIBLE;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.keeper.Standing;
import org.demebook.notation.Sex;
import org.demebook.problem.Refusal;
import org.demebook.registry.AnimalFacts.TwinsStated;
import org.demebook.registry.AnimalFacts.TwinsWithdrawn;

/**
 * Littermates from one sac. Identical ones are one genome and so have one parentage: what is found out of one holds for
 * all. Who may say so is decided by the room that keeps the litter.
 */
@ApplicationScoped
public class Twins {
    /** Studbook numbers of two from one sac, the earlier number first. */
    public record Pair(String first, String second, TwinKind kind) {}

    @Inject
    Journal journal;

    @Inject
    Animals animals;

    /** States that two young of a litter came from one sac; refuses with TWINS_NOT_POSSIBLE, telling every reason. */
    @Transactional(TxType.MANDATORY)
    public void state(Standing by, UUID litterId, String number, String otherNumber, TwinKind kind) {
        var two = two(by, litterId, number, otherNumber);
        var reasons = reasonsAgainst(by, two.get(0), two.get(1), kind);
        if (!reasons.isEmpty()) {
            throw new Refusal(
                    TWINS_NOT_POSSIBLE,
                    "%s and %s cannot be stated as %s twins: %s."
                            .formatted(two.get(0).number, two.get(1).number, kind.word(), String.join("; ", reasons)));
        }
        journal.record(by.populationId(), by.keeperId(), new TwinsStated(two.get(1).id, two.get(0).id, kind));
    }

    /** Takes back that two are twins. */
    @Transactional(TxType.MANDATORY)
    public void withdraw(Standing by, UUID litterId, String number, String otherNumber) {
        var two = two(by, litterId, number, otherNumber);
        var later = two.get(1);
        if (!two.get(0).id.equals(later.twinOfId)) {
            throw new Refusal(
                    TWINS_NOT_POSSIBLE,
                    "%s and %s are not stated as twins; there is nothing to take back."
                            .formatted(two.get(0).number, later.number));
        }
        journal.record(by.populationId(), by.keeperId(), new TwinsWithdrawn(later.id, later.twinSeq));
    }

    /** Of each litter the pairs that were stated, in order; a litter without any is left out. */
    @Transactional
    public Map<UUID, List<Pair>> ofLitters(UUID populationId, Collection<UUID> litterIds) {
        var young = new HashMap<UUID, Animal>();
        Animal.ofLitters(populationId, litterIds).forEach(animal -> young.put(animal.id, animal));
        var pairs = new HashMap<UUID, List<Pair>>();
        young.values().stream()
                .filter(animal -> animal.twinOfId != null)
                .sorted((one, other) -> Long.compare(one.serial, other.serial))
                .forEach(animal -> pairs.computeIfAbsent(animal.litterId, litter -> new ArrayList<>())
                        .add(new Pair(young.get(animal.twinOfId).number, animal.number, animal.twinKind)));
        return pairs;
    }

    /** An animal and all that were stated to be one genome with it. */
    static List<Animal> oneGenome(Animal animal) {
        var found = new LinkedHashMap<UUID, Animal>();
        var waiting = new ArrayList<>(List.of(animal));
        while (!waiting.isEmpty()) {
            var next = waiting.remove(waiting.size() - 1);
            if (found.putIfAbsent(next.id, next) != null) {
                continue;
            }
            if (next.twinKind == TwinKind.IDENTICAL) {
                waiting.add(Animal.of(next.populationId, next.twinOfId));
            }
            Animal.twinsOf(next.populationId, List.of(next.id)).stream()
                    .filter(twin -> twin.twinKind == TwinKind.IDENTICAL)
                    .forEach(waiting::add);
        }
        return List.copyOf(found.values());
    }

    /** The two, the earlier number first. */
    private List<Animal> two(Standing by, UUID litterId, String number, String otherNumber) {
        var one = ofLitter(by, litterId, number);
        var other = ofLitter(by, litterId, otherNumber);
        if (one.id.equals(other.id)) {
            throw new Refusal(TWINS_NOT_POSSIBLE, "Twins are two; %s was named twice.".formatted(one.number));
        }
        return one.serial < other.serial ? List.of(one, other) : List.of(other, one);
    }

    private Animal ofLitter(Standing by, UUID litterId, String number) {
        var animal = animals.require(by, number);
        if (!litterId.equals(animal.litterId)) {
            throw new Refusal(NO_SUCH_ANIMAL, "%s is not of this litter.".formatted(animal.number));
        }
        return animal;
    }

    private static List<String> reasonsAgainst(Standing by, Animal first, Animal second, TwinKind kind) {
        var reasons = new ArrayList<String>();
        if (second.twinOfId != null) {
            reasons.add("%s is stated as a twin of %s already; take that back first, or link the other with it"
                    .formatted(second.number, Animal.of(by.populationId(), second.twinOfId).number));
        }
        if (first.sameAsId != null || second.sameAsId != null) {
            reasons.add("one of them was merged with another record; separate them first");
        }
        if (kind == TwinKind.UNCLEAR) {
            return reasons;
        }
        if (first.sex != Sex.UNKNOWN && second.sex != Sex.UNKNOWN && first.sex != second.sex) {
            reasons.add("%s is %s and %s is %s, so they are not one genome; state them as unclear"
                    .formatted(first.number, first.sex.word(), second.number, second.sex.word()));
        }
        if (!first.damId.equals(second.damId) || !first.sire().equals(second.sire())) {
            reasons.add("their parents are stated differently; correct one of the two first");
        }
        return reasons;
    }
}
