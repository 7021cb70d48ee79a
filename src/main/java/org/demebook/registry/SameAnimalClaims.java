package org.demebook.registry;

import static org.demebook.problem.ProblemType.CLAIM_ALREADY_ANSWERED;
import static org.demebook.problem.ProblemType.CLAIM_NOT_POSSIBLE;
import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_CLAIM;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.Sex;
import org.demebook.problem.Refusal;
import org.demebook.registry.AnimalFacts.SameAnimalClaimed;
import org.demebook.registry.AnimalFacts.SameAnimalConfirmed;
import org.demebook.registry.AnimalFacts.SameAnimalReversed;
import org.demebook.rest.ShownTo;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/**
 * Two records of one animal. The keeper of one claims it, the keeper of the other confirms; both numbers stay, the older
 * record stands for both, and either keeper can take it back.
 */
@ApplicationScoped
public class SameAnimalClaims {
    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Lineage lineage;

    @Inject
    AnimalSight sight;

    @Inject
    Elsewhere elsewhere;

    @Inject
    EntityManager entities;

    /**
     * A claim that two records are one animal.
     *
     * @param other studbook number of the other record
     * @param evidence in words: the same transponder, the same marks, …
     */
    public record NewClaim(
            @NotNull @Size(max = 60) String other,
            @Nullable @Size(max = 1000) String evidence) {}

    /**
     * @param state {@code claimed}, {@code confirmed} or {@code reversed}
     */
    @ShownTo(ShownTo.Whom.BOTH_SIDES)
    public record ClaimView(
            UUID id,
            String animal,
            String other,
            String state,
            @Nullable String evidence,
            long revision) {}

    @Transactional
    public ClaimView claim(Standing by, String number, String otherNumber, @Nullable String evidence) {
        journal.open(by.populationId());
        var animal = animals.require(by, number);
        var other = other(by, animal, otherNumber);
        animals.requireInHand(by, animal);
        requirePossible(by, animal, other);
        var id = Journal.newId();
        journal.record(by.populationId(), by.keeperId(), new SameAnimalClaimed(id, animal.id, other.id, evidence));
        // one pair of hands holds both: nobody else has to agree
        if (holds(by, other)) {
            merge(by, id, animal, other);
        }
        return view(by, id);
    }

    /** One that the asker sees, or one that carries the same transponder: whoever scans it has both numbers. */
    private Animal other(Standing by, Animal animal, String otherNumber) {
        return Animal.numbered(by.populationId(), Animals.number(otherNumber).toString())
                .filter(other -> Identifier.shareTransponder(by.populationId(), animal.id, other.id))
                .orElseGet(() -> animals.require(by, otherNumber));
    }

    @Transactional
    public ClaimView confirm(Standing by, UUID claimId) {
        journal.open(by.populationId());
        var claim = require(by, claimId);
        var other = Animal.of(by.populationId(), claim.otherId);
        if (!holds(by, other)) {
            throw new Refusal(NOT_YOUR_ANIMAL, "The keeper of %s confirms; ask them.".formatted(other.number));
        }
        if (claim.state.equals(SameAnimalClaim.REVERSED)) {
            throw new Refusal(CLAIM_ALREADY_ANSWERED, "The claim was taken back; make it anew.");
        }
        if (claim.state.equals(SameAnimalClaim.CLAIMED)) {
            requirePossible(by, Animal.of(by.populationId(), claim.animalId), other);
            merge(by, claimId, Animal.of(by.populationId(), claim.animalId), other);
        }
        return view(by, claimId);
    }

    /** An offer to another node of either record ends: there is one animal, under one number. */
    private void merge(Standing by, UUID claimId, Animal animal, Animal other) {
        for (var record : List.of(animal, other)) {
            elsewhere.requireHere(by.populationId(), record.id);
            elsewhere.takeBack(
                    by, record.id, "%s and %s were found to be one animal".formatted(animal.number, other.number));
        }
        journal.record(by.populationId(), by.keeperId(), new SameAnimalConfirmed(claimId));
    }

    /** Takes a claim back, refuses it, or separates two merged records again: all by either keeper. */
    @Transactional
    public ClaimView reverse(Standing by, UUID claimId) {
        journal.open(by.populationId());
        var claim = require(by, claimId);
        if (!claim.state.equals(SameAnimalClaim.REVERSED)) {
            journal.record(by.populationId(), by.keeperId(), new SameAnimalReversed(claimId));
        }
        return view(by, claimId);
    }

    /** The claims about an animal of the asker's. */
    @WholeRegister
    @Transactional
    public List<ClaimView> about(Standing by, String number) {
        var animal = animals.require(by, number);
        return SameAnimalClaim.about(by.populationId(), animal.id).stream()
                .filter(claim -> concerns(by, claim))
                .map(claim -> view(by, claim.id))
                .toList();
    }

    private void requirePossible(Standing by, Animal animal, Animal other) {
        var reasons = new ArrayList<String>();
        var lens = sight.lens(by);
        boolean seen = List.of(animal, other).stream()
                .allMatch(one -> AnimalSight.shows(lens, one, FieldGroup.IDENTITY)
                        && AnimalSight.shows(lens, one, FieldGroup.PARENTAGE));
        if (animal.id.equals(other.id)) {
            reasons.add("both numbers are one record");
        }
        if (animal.sameAsId != null || other.sameAsId != null) {
            reasons.add("one of them was merged with another already; separate them first");
        }
        if (Twins.oneGenome(animal).stream().anyMatch(twin -> twin.id.equals(other.id))) {
            reasons.add("they are stated as identical twins, who share a genotype and are two animals");
        }
        if (animal.sex != Sex.UNKNOWN && other.sex != Sex.UNKNOWN && animal.sex != other.sex) {
            reasons.add(
                    "%s is %s, %s is %s".formatted(animal.number, animal.sex.word(), other.number, other.sex.word()));
        }
        if (animal.born != null
                && other.born != null
                && (animal.born.surelyBefore(other.born) || other.born.surelyBefore(animal.born))) {
            reasons.add("%s was born on %s, %s on %s".formatted(animal.number, animal.born, other.number, other.born));
        }
        addIfDifferent(by, "dam", animal.damId, other.damId, reasons);
        addIfDifferent(by, "sire", animal.sireId, other.sireId, reasons);
        for (var pair : List.of(List.of(animal, other), List.of(other, animal))) {
            lineage.wayUp(by.populationId(), List.of(pair.get(0).id), pair.get(1).id)
                    .filter(way -> way.size() > 1)
                    .ifPresent(way -> reasons.add("one descends from the other" + told(lens, by, way)));
        }
        if (!reasons.isEmpty() && !seen) {
            throw new Refusal(
                    CLAIM_NOT_POSSIBLE,
                    "%s and %s cannot be one animal: what is recorded of them does not agree, and not all of it is shown to you. Talk with the keeper of the other."
                            .formatted(animal.number, other.number));
        }
        if (!reasons.isEmpty()) {
            throw new Refusal(
                    CLAIM_NOT_POSSIBLE,
                    "%s and %s cannot be one animal: %s."
                            .formatted(animal.number, other.number, String.join("; ", reasons)));
        }
    }

    private static String told(Lens lens, Standing by, List<String> way) {
        return AnimalSight.showsWay(lens, by.populationId(), way) ? ": " + String.join(" < ", way) : "";
    }

    private static void addIfDifferent(
            Standing by, String parent, @Nullable UUID one, @Nullable UUID other, List<String> reasons) {
        if (one != null && other != null && !one.equals(other)) {
            reasons.add("their %ss are %s and %s"
                    .formatted(
                            parent,
                            Animal.of(by.populationId(), one).number,
                            Animal.of(by.populationId(), other).number));
        }
    }

    private SameAnimalClaim require(Standing by, UUID claimId) {
        return SameAnimalClaim.concerning(by.populationId(), claimId, by.keeperId(), keepers.collectionIds(by))
                .orElseThrow(() -> new Refusal(NO_SUCH_CLAIM, "There is no such claim about an animal of yours."));
    }

    private boolean concerns(Standing by, SameAnimalClaim claim) {
        return claim.claimedBy.equals(by.keeperId())
                || holds(by, Animal.of(by.populationId(), claim.animalId))
                || holds(by, Animal.of(by.populationId(), claim.otherId));
    }

    private boolean holds(Standing by, Animal animal) {
        return animal.collectionId != null && keepers.actsFor(by.populationId(), by.keeperId(), animal.collectionId);
    }

    private ClaimView view(Standing by, UUID claimId) {
        entities.flush();
        var claim = SameAnimalClaim.of(by.populationId(), claimId);
        return new ClaimView(
                claim.id,
                Animal.of(by.populationId(), claim.animalId).number,
                Animal.of(by.populationId(), claim.otherId).number,
                claim.state,
                claim.evidence,
                claim.revision);
    }
}
