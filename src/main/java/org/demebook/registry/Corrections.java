package org.demebook.registry;

import static org.demebook.problem.ProblemType.ANIMAL_DEAD;
import static org.demebook.problem.ProblemType.DEAD_BEFORE_ITS_YOUNG;
import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;
import static org.demebook.problem.ProblemType.OWN_ANCESTOR;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.demebook.journal.Fact;
import org.demebook.journal.Journal;
import org.demebook.keeper.Standing;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.notation.SourceCode;
import org.demebook.problem.LeftAsIs;
import org.demebook.problem.Refusal;
import org.demebook.problem.Rule;
import org.demebook.registry.AnimalFacts.AnimalDescribed;
import org.demebook.registry.AnimalFacts.AnimalDied;
import org.demebook.registry.AnimalFacts.DeathWithdrawn;
import org.demebook.registry.AnimalFacts.IdentifierAdded;
import org.demebook.registry.AnimalFacts.IdentifierEnded;
import org.demebook.registry.AnimalFacts.LocalityClaimed;
import org.demebook.registry.AnimalFacts.ParentageStated;
import org.demebook.registry.AnimalFacts.SexDetermined;
import org.demebook.registry.AnimalFindings.AnimalFindingsView;
import org.demebook.registry.Localities.StatedLocality;
import org.demebook.rest.Revision;
import org.jspecify.annotations.Nullable;

/**
 * What is found out about an animal later. Every change is a new fact that supersedes the one before; all are made by the
 * holder, on the revision that they read.
 */
@ApplicationScoped
public class Corrections {
    /**
     * Parentage as it is known now; what is left out is unknown.
     *
     * @param removedFromDeadDam true when it was taken from its dam after her death
     * @param leave what is as it is although a rule speaks against it
     */
    public record StatedParentage(
            @Nullable @Size(max = 60) String dam,
            @Nullable @Valid StatedSire sire,
            @Nullable Boolean removedFromDeadDam,
            @Nullable @Size(max = 20) List<@NotNull @Valid LeftAsIs> leave) {}

    /**
     * A sex that was found.
     *
     * @param sexDetermination how; nothing when you cannot say
     * @param on the day; nothing when you cannot say
     * @param leave what is as it is although a rule speaks against it
     */
    public record StatedSex(
            @NotNull Sex sex,
            @Nullable @Valid SexDetermination sexDetermination,
            @Nullable LocalDate on,
            @Nullable @Size(max = 20) List<@NotNull @Valid LeftAsIs> leave) {}

    /**
     * A death; the day as precisely as it is known.
     *
     * @param leave what is as it is although a rule speaks against it
     */
    public record StatedDeath(
            @NotNull RoughDate on,
            @Nullable @Size(max = 500) String cause,
            @Nullable @Size(max = 20) List<@NotNull @Valid LeftAsIs> leave) {
        public StatedDeath(RoughDate on, @Nullable String cause) {
            this(on, cause, null);
        }
    }

    /**
     * Birth, origin and notes as they are known now; what is left out is unknown.
     *
     * @param leave what is as it is although a rule speaks against it
     */
    public record Description(
            @Nullable RoughDate born,
            @NotNull Origin origin,
            @Nullable SourceCode sourceCode,
            @Nullable Boolean malformed,
            @Nullable @Size(max = 2000) String notes,
            @Nullable @Size(max = 20) List<@NotNull @Valid LeftAsIs> leave) {}

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

    @Inject
    Family family;

    @Inject
    OwnHistory history;

    @Inject
    IdentifierRules identifierRules;

    @Inject
    LeftFindings leftFindings;

    @Inject
    AnimalFindings findings;

    @Inject
    AnimalSight sight;

    @Inject
    AwayAnimals awayAnimals;

    /** What is found out of one of identical twins is found out of each: they are one genome. */
    @Transactional
    public Registered parentage(Standing by, String number, @Nullable String ifMatch, StatedParentage stated) {
        var animal = open(by, number, ifMatch);
        var breaches = new ArrayList<Breach>();
        var drawId = Objects.requireNonNullElseGet(animal.litterId, Journal::newId);
        var removed = Objects.requireNonNullElse(stated.removedFromDeadDam(), animal.removedFromDeadDam);
        var young = new Kin(
                animal.number,
                animal.sex,
                animal.born,
                animal.died,
                animal.sexDetermination(),
                removed,
                animal.localityClaim());
        var parents = registration.parents(by, stated.dam(), stated.sire(), drawId, breaches);
        breaches.addAll(registration
                .rules(by)
                .check(young, animal.origin, Registration.kin(parents.dam()), Registration.kin(parents.sires())));
        var oneGenome = Twins.oneGenome(animal);
        oneGenome.stream()
                .flatMap(twin -> ownAncestor(by, twin, parents).stream())
                .findFirst()
                .ifPresent(breaches::add);
        var dam = parents.dam() == null ? null : parents.dam().id;
        var fact = new ParentageStated(animal.id, dam, parents.sire(), removed, animal.parentageSeq);
        var saved = save(by, animal, breaches, stated.leave(), fact);
        for (var twin : oneGenome.subList(1, oneGenome.size())) {
            record(by, new ParentageStated(twin.id, dam, parents.sire(), removed, twin.parentageSeq));
        }
        return saved;
    }

    private Optional<Breach> ownAncestor(Standing by, Animal animal, Registration.Parents parents) {
        var above = new ArrayList<UUID>();
        if (parents.dam() != null) {
            above.add(parents.dam().id);
        }
        parents.sires().forEach(sire -> above.add(sire.id));
        return lineage.wayUp(animal.populationId, above, Objects.requireNonNullElse(animal.sameAsId, animal.id))
                .map(way -> Breach.error(
                        OWN_ANCESTOR,
                        Rule.OWN_ANCESTOR,
                        parents.dam() != null && way.get(0).equals(parents.dam().number) ? "dam" : "sire",
                        way.get(0),
                        "%s would be its own ancestor%s. One of these links is wrong; correct it first."
                                .formatted(animal.number, told(by, animal, way)),
                        null));
    }

    /** The loop, where the asker sees all of it; else only that there is one. */
    private String told(Standing by, Animal animal, List<String> way) {
        return AnimalSight.showsWay(sight.lens(by), animal.populationId, way)
                ? ": %s < %s (young < parent)".formatted(animal.number, String.join(" < ", way))
                : ", through animals that are not shown to you";
    }

    @Transactional
    public Registered sex(Standing by, String number, @Nullable String ifMatch, StatedSex stated) {
        var animal = open(by, number, ifMatch);
        var breaches = new ArrayList<>(history.sex(by, animal, stated.sex(), stated.sexDetermination()));
        registration.checkDay("on", stated.on() == null ? null : RoughDate.of(stated.on()), breaches);
        var fact = new SexDetermined(animal.id, stated.sex(), stated.sexDetermination(), stated.on(), animal.sexSeq);
        return save(by, animal, breaches, stated.leave(), fact);
    }

    @Transactional
    public Registered death(Standing by, String number, @Nullable String ifMatch, StatedDeath stated) {
        var animal = open(by, number, ifMatch);
        var breaches = new ArrayList<Breach>();
        registration.checkDay("on", stated.on(), breaches);
        var dead = new Kin(
                animal.number,
                animal.sex,
                animal.born,
                stated.on(),
                animal.sexDetermination(),
                animal.removedFromDeadDam,
                animal.localityClaim());
        breaches.addAll(registration.rules(by).check(dead, Origin.UNKNOWN, null, List.of()));
        breaches.addAll(history.death(animal, stated.on()));
        diedBeforeYoung(by, animal, stated.on()).ifPresent(breaches::add);
        var saved = save(
                by,
                animal,
                breaches,
                stated.leave(),
                new AnimalDied(animal.id, stated.on(), stated.cause(), animal.deathSeq));
        awayAnimals.takeBack(by, animal.id, "it died on " + stated.on());
        return saved;
    }

    private Optional<Breach> diedBeforeYoung(Standing by, Animal animal, RoughDate on) {
        return sight.seen(by, Animal.youngOf(animal.populationId, animal.id)).stream()
                .filter(young -> animal.id.equals(young.damId) && !young.removedFromDeadDam)
                .filter(young -> young.born != null && on.surelyBefore(young.born))
                .findFirst()
                .map(young -> Breach.block(
                        DEAD_BEFORE_ITS_YOUNG,
                        Rule.DAM_DIED_BEFORE_BIRTH,
                        "on",
                        on,
                        "%s bore %s on %s and cannot have died on %s; correct one of the two dates."
                                .formatted(animal.number, young.number, young.born, on),
                        null));
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
        registration.checkDay("born", stated.born(), breaches);
        var described = new Kin(
                animal.number,
                animal.sex,
                stated.born(),
                animal.died,
                animal.sexDetermination(),
                animal.removedFromDeadDam,
                animal.localityClaim());
        breaches.addAll(family.withParents(by, animal, described, stated.origin()));
        breaches.addAll(family.withYoung(by, animal, described));
        var fact = new AnimalDescribed(
                animal.id,
                stated.born(),
                stated.origin(),
                stated.sourceCode(),
                Objects.requireNonNullElse(stated.malformed(), animal.malformed),
                stated.notes(),
                animal.descriptionSeq);
        return save(by, animal, breaches, stated.leave(), fact);
    }

    @Transactional
    public Registered locality(Standing by, String number, @Nullable String ifMatch, StatedLocality stated) {
        var animal = open(by, number, ifMatch);
        var claim = Objects.requireNonNull(registration.locality(by, stated.claim()));
        var claimed = new Kin(
                animal.number,
                animal.sex,
                animal.born,
                animal.died,
                animal.sexDetermination(),
                animal.removedFromDeadDam,
                claim);
        var breaches = Stream.concat(
                        family.withParents(by, animal, claimed, animal.origin).stream(),
                        family.withYoung(by, animal, claimed).stream())
                .filter(breach -> LocalityRules.RULES.contains(breach.finding().rule()))
                .toList();
        return save(by, animal, breaches, stated.leave(), new LocalityClaimed(animal.id, claim, animal.localitySeq));
    }

    /** Refuses what may not be saved; else saves it, with what is left as it is. */
    private Registered save(Standing by, Animal animal, List<Breach> found, @Nullable List<LeftAsIs> leave, Fact fact) {
        var subjects =
                Stream.of(animal.id, animal.litterId).filter(Objects::nonNull).toList();
        var breaches = leftFindings.unsettled(by.populationId(), subjects, found);
        var warnings = Breach.refuse(breaches, leave);
        record(by, fact);
        leftFindings.record(by, LeftFindings.ANIMAL, animal.id, breaches, leave);
        return new Registered(views.of(by, animal), warnings);
    }

    @Transactional
    public Registered addIdentifier(Standing by, String number, NewIdentifier stated) {
        journal.open(by.populationId());
        var animal = animals.require(by, number);
        animals.requireInHand(by, animal);
        var collectionId = Objects.requireNonNull(animal.collectionId);
        var breaches = new ArrayList<Breach>();
        var identifier = identifierRules.check(
                by, stated.identifier(), collectionId, animal.alive() ? animal.id : null, breaches);
        var unsettled = leftFindings.unsettled(by.populationId(), List.of(animal.id), breaches);
        var warnings = Breach.refuse(unsettled, stated.leave());
        var present = Identifier.of(by.populationId(), animal.id);
        if (present.stream().noneMatch(other -> other.view().isSame(identifier))) {
            record(by, new IdentifierAdded(animal.id, identifier, collectionId));
        }
        leftFindings.record(by, LeftFindings.ANIMAL, animal.id, unsettled, stated.leave());
        return new Registered(views.of(by, animal), warnings);
    }

    /** The animal carries it no longer; that it did stays in the journal. */
    @Transactional
    public AnimalView endIdentifier(Standing by, String number, @Nullable String ifMatch, IdentifierView stated) {
        var animal = open(by, number, ifMatch);
        var present = Identifier.of(by.populationId(), animal.id).stream()
                .map(Identifier::view)
                .filter(stated::isSame)
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_ANIMAL,
                        "%s carries no %s \"%s\".".formatted(animal.number, stated.kind(), stated.value())));
        record(by, new IdentifierEnded(animal.id, present));
        return views.of(by, animal);
    }

    /**
     * Leaves as it is what a rule speaks against, on the keeper's word; it is not raised again. Refuses with INVALID_VALUES
     * where the rule finds nothing, or what is never left.
     */
    @Transactional
    public AnimalFindingsView leave(Standing by, String number, LeftAsIs leaf) {
        journal.open(by.populationId());
        var animal = animals.require(by, number);
        animals.requireInHand(by, animal);
        var breaches = findings.standing(by, animal);
        if (breaches.stream().noneMatch(breach -> breach.isLeftBy(List.of(leaf)))) {
            throw new Refusal(
                    INVALID_VALUES,
                    "Nothing about %s is found by the rule \"%s\" that could be left as it is. Look at its findings again."
                            .formatted(animal.number, leaf.rule()));
        }
        leftFindings.record(by, LeftFindings.ANIMAL, animal.id, breaches, List.of(leaf));
        return findings.of(by, number);
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
}
