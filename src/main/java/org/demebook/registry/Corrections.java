package org.demebook.registry;

import static org.demebook.problem.ProblemType.ANIMAL_DEAD;
import static org.demebook.problem.ProblemType.DEAD_BEFORE_ITS_YOUNG;
import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;
import static org.demebook.problem.ProblemType.OWN_ANCESTOR;
import static org.demebook.problem.ProblemType.SEX_CONTRADICTS_YOUNG;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.demebook.journal.Fact;
import org.demebook.journal.Journal;
import org.demebook.keeper.Standing;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.notation.SourceCode;
import org.demebook.problem.Refusal;
import org.demebook.registry.AnimalFacts.AnimalDescribed;
import org.demebook.registry.AnimalFacts.AnimalDied;
import org.demebook.registry.AnimalFacts.DeathWithdrawn;
import org.demebook.registry.AnimalFacts.IdentifierAdded;
import org.demebook.registry.AnimalFacts.IdentifierEnded;
import org.demebook.registry.AnimalFacts.ParentageStated;
import org.demebook.registry.AnimalFacts.SexDetermined;
import org.demebook.rest.Revision;
import org.jspecify.annotations.Nullable;

/**
 * What is found out about an animal later. Every change is a new fact that supersedes the one before; all are made by the
 * holder, on the revision that they read.
 */
@ApplicationScoped
public class Corrections {
    /** Parentage as it is known now; what is left out is unknown. */
    public record StatedParentage(
            @Nullable @Size(max = 60) String dam,
            @Nullable @Valid StatedSire sire) {}

    public record StatedSex(@NotNull Sex sex) {}

    /** A death; the day as precisely as it is known. */
    public record StatedDeath(
            @NotNull RoughDate on,
            @Nullable @Size(max = 500) String cause) {}

    /** Birth, origin and notes as they are known now; what is left out is unknown. */
    public record Description(
            @Nullable RoughDate born,
            @NotNull Origin origin,
            @Nullable SourceCode sourceCode,
            @Nullable Boolean malformed,
            @Nullable @Size(max = 2000) String notes) {}

    @Inject
    Journal journal;

    @Inject
    Animals animals;

    @Inject
    AnimalViews views;

    @Inject
    Registration registration;

    @Inject
    Lineage lineage;

    /** What is found out of one of identical twins is found out of each: they are one genome. */
    @Transactional
    public Registered parentage(Standing by, String number, @Nullable String ifMatch, StatedParentage stated) {
        var animal = open(by, number, ifMatch);
        var breaches = new ArrayList<Breach>();
        var drawId = Objects.requireNonNullElseGet(animal.litterId, Journal::newId);
        var parents = registration.parents(by, stated.dam(), stated.sire(), drawId, breaches);
        breaches.addAll(registration
                .rules(by)
                .check(
                        animal.kin(),
                        animal.origin,
                        Registration.kin(parents.dam()),
                        Registration.kin(parents.sires())));
        var above = new ArrayList<UUID>();
        if (parents.dam() != null) {
            above.add(parents.dam().id);
        }
        parents.sires().forEach(sire -> above.add(sire.id));
        var oneGenome = Twins.oneGenome(animal);
        oneGenome.stream()
                .flatMap(twin ->
                        lineage
                                .wayUp(by.populationId(), above, Objects.requireNonNullElse(twin.sameAsId, twin.id))
                                .stream())
                .findFirst()
                .ifPresent(way -> breaches.add(Breach.error(
                        OWN_ANCESTOR,
                        parents.dam() != null && way.get(0).equals(parents.dam().number) ? "dam" : "sire",
                        way.get(0),
                        "%s would be its own ancestor: %s < %s (young < parent). One of these links is wrong."
                                .formatted(animal.number, animal.number, String.join(" < ", way)))));
        var warnings = Breach.refuse(breaches, null);
        var dam = parents.dam() == null ? null : parents.dam().id;
        for (var twin : oneGenome) {
            record(by, new ParentageStated(twin.id, dam, parents.sire(), twin.parentageSeq));
        }
        return new Registered(views.of(by, animal), warnings);
    }

    @Transactional
    public AnimalView sex(Standing by, String number, @Nullable String ifMatch, StatedSex stated) {
        var animal = open(by, number, ifMatch);
        if (stated.sex() != Sex.UNKNOWN) {
            for (var young : Animal.youngOf(by.populationId(), animal.id)) {
                var isDam = animal.id.equals(young.damId);
                if (isDam == (stated.sex() == Sex.MALE)) {
                    throw new Refusal(
                            SEX_CONTRADICTS_YOUNG,
                            "%s cannot be %s: it is registered as %s of %s. Correct that parentage first, or look again."
                                    .formatted(
                                            animal.number, stated.sex().word(), isDam ? "dam" : "sire", young.number));
                }
            }
        }
        record(by, new SexDetermined(animal.id, stated.sex(), animal.sexSeq));
        return views.of(by, animal);
    }

    @Transactional
    public AnimalView death(Standing by, String number, @Nullable String ifMatch, StatedDeath stated) {
        var animal = open(by, number, ifMatch);
        var breaches = new ArrayList<Breach>();
        registration.checkPast("on", stated.on(), breaches);
        var dead = new Kin(animal.number, animal.sex, animal.born, stated.on());
        breaches.addAll(registration.rules(by).check(dead, Origin.UNKNOWN, null, List.of()));
        for (var young : Animal.youngOf(by.populationId(), animal.id)) {
            if (animal.id.equals(young.damId)
                    && young.born != null
                    && stated.on().surelyBefore(young.born)) {
                breaches.add(Breach.error(
                        DEAD_BEFORE_ITS_YOUNG,
                        "on",
                        stated.on(),
                        "%s bore %s on %s and cannot have died on %s; correct one of the two dates."
                                .formatted(animal.number, young.number, young.born, stated.on())));
            }
        }
        Breach.refuse(breaches, null);
        record(by, new AnimalDied(animal.id, stated.on(), stated.cause(), animal.deathSeq));
        return views.of(by, animal);
    }

    /** Takes a death back that was reported by mistake. */
    @Transactional
    public AnimalView alive(Standing by, String number, @Nullable String ifMatch) {
        var animal = open(by, number, ifMatch);
        if (animal.alive()) {
            throw new Refusal(
                    ANIMAL_DEAD, "%s is registered as alive; there is no death to take back.".formatted(animal.number));
        }
        record(by, new DeathWithdrawn(animal.id, animal.deathSeq));
        return views.of(by, animal);
    }

    @Transactional
    public Registered description(Standing by, String number, @Nullable String ifMatch, Description stated) {
        var animal = open(by, number, ifMatch);
        var breaches = new ArrayList<Breach>();
        registration.checkPast("born", stated.born(), breaches);
        var rules = registration.rules(by);
        var described = new Kin(animal.number, animal.sex, stated.born(), animal.died);
        breaches.addAll(rules.check(described, stated.origin(), dam(animal), sires(animal)));
        for (var young : Animal.youngOf(by.populationId(), animal.id)) {
            var isDam = animal.id.equals(young.damId);
            breaches.addAll(rules.check(
                    young.kin(), Origin.UNKNOWN, isDam ? described : null, isDam ? List.of() : List.of(described)));
        }
        var warnings = Breach.refuse(breaches, null);
        record(
                by,
                new AnimalDescribed(
                        animal.id,
                        stated.born(),
                        stated.origin(),
                        stated.sourceCode(),
                        Objects.requireNonNullElse(stated.malformed(), animal.malformed),
                        stated.notes(),
                        animal.descriptionSeq));
        return new Registered(views.of(by, animal), warnings);
    }

    @Transactional
    public AnimalView addIdentifier(Standing by, String number, IdentifierView stated) {
        journal.open(by.populationId());
        var animal = animals.require(by, number);
        animals.requireInHand(by, animal);
        var collectionId = Objects.requireNonNull(animal.collectionId);
        var breaches = new ArrayList<Breach>();
        var identifier = registration.identifier(by, stated, collectionId, breaches);
        Breach.refuse(breaches, null);
        var present = Identifier.of(by.populationId(), animal.id);
        if (present.stream().noneMatch(other -> other.view().equals(identifier))) {
            record(by, new IdentifierAdded(animal.id, identifier, collectionId));
        }
        return views.of(by, animal);
    }

    /** The animal carries it no longer; that it did stays in the journal. */
    @Transactional
    public AnimalView endIdentifier(Standing by, String number, @Nullable String ifMatch, IdentifierView stated) {
        var animal = open(by, number, ifMatch);
        var present = Identifier.of(by.populationId(), animal.id).stream()
                .map(Identifier::view)
                .filter(stated::equals)
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_ANIMAL,
                        "%s carries no %s \"%s\".".formatted(animal.number, stated.kind(), stated.value())));
        record(by, new IdentifierEnded(animal.id, present));
        return views.of(by, animal);
    }

    private Animal open(Standing by, String number, @Nullable String ifMatch) {
        journal.open(by.populationId());
        var animal = animals.require(by, number);
        animals.requireInHand(by, animal);
        Revision.require(ifMatch, animal.revision);
        return animal;
    }

    private void record(Standing by, Fact fact) {
        journal.record(by.populationId(), by.keeperId(), fact);
    }

    private static @Nullable Kin dam(Animal animal) {
        return animal.damId == null
                ? null
                : Animal.of(animal.populationId, animal.damId).kin();
    }

    private static List<Kin> sires(Animal animal) {
        if (animal.sireId != null) {
            return List.of(Animal.of(animal.populationId, animal.sireId).kin());
        }
        return CandidateSire.of(animal.populationId, List.of(animal.id)).stream()
                .map(candidate ->
                        Animal.of(animal.populationId, candidate.sireId).kin())
                .toList();
    }
}
