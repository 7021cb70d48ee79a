package org.demebook.registry;

import static org.demebook.problem.ProblemType.CONTRADICTORY_PARENTAGE;
import static org.demebook.problem.ProblemType.MISTYPED_NUMBER;
import static org.demebook.problem.ProblemType.NO_SUCH_PARENT;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.demebook.consent.FieldGroup;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.notation.StudbookNumber;
import org.demebook.problem.Finding;
import org.demebook.problem.Rule;
import org.jspecify.annotations.Nullable;

/** Checks what is stated of an animal and turns it into the fact to be recorded; collects every breach before it refuses. */
@ApplicationScoped
class Registration {
    /** What has to be shown of another animal before it is said that a new one looks like it. */
    private static final Set<FieldGroup> LOOKS =
            EnumSet.of(FieldGroup.IDENTITY, FieldGroup.PARENTAGE, FieldGroup.MARKS_AND_PHOTOS);

    /** A fact that may be recorded, and what is worth a second look. */
    record Checked(AnimalRegistered fact, List<Breach> breaches, List<Finding> warnings) {}

    /** Parents found in the register. */
    record Parents(@Nullable Animal dam, List<Animal> sires, Sire sire) {}

    @Inject
    Keepers keepers;

    @Inject
    IdentifierRules identifierRules;

    @Inject
    AnimalSight sight;

    @Inject
    Journal journal;

    @Inject
    Clock clock;

    Checked check(Standing by, NewAnimal animal) {
        var breaches = new ArrayList<Breach>();
        var number = new StudbookNumber(
                by.populationCode(), journal.nodeCode(), SerialCounter.last(by.populationId(), journal.nodeCode()) + 1);
        var collection = keepers.collection(by, animal.collection());
        var young = new Kin(
                "The animal",
                animal.sex(),
                animal.born(),
                animal.died(),
                animal.sexDetermination(),
                Boolean.TRUE.equals(animal.removedFromDeadDam()),
                locality(by, animal.locality()));
        checkDay("born", animal.born(), breaches);
        checkDay("died", animal.died(), breaches);
        var parents = parents(by, animal.dam(), animal.sire(), Journal.newId(), breaches);
        breaches.addAll(rules(by).check(young, animal.origin(), kin(parents.dam()), kin(parents.sires())));
        var identifiers = identifierRules.check(by, animal, collection.id(), breaches);
        likeAnother(by, animal, parents.dam(), identifiers).ifPresent(breaches::add);
        var warnings = Breach.refuse(breaches, animal.leave());
        return new Checked(
                new AnimalRegistered(
                        Journal.newId(),
                        number,
                        animal.sex(),
                        animal.born(),
                        animal.died(),
                        animal.origin(),
                        animal.sourceCode(),
                        parents.dam() == null ? null : parents.dam().id,
                        parents.sire(),
                        null,
                        false,
                        collection.id(),
                        identifiers,
                        animal.notes(),
                        animal.sexDetermination(),
                        young.removedFromDeadDam(),
                        young.locality()),
                breaches,
                warnings);
    }

    /** A claim with its locality written out. */
    @Nullable
    LocalityClaim locality(Standing by, @Nullable LocalityClaim stated) {
        Population population = Population.findById(by.populationId());
        return stated == null ? null : stated.in(population.locality);
    }

    ParentageRules rules(Standing by) {
        Population population = Population.findById(by.populationId());
        return new ParentageRules(population.profile, population.locality, LocalDate.now(clock));
    }

    void checkDay(String field, @Nullable RoughDate date, List<Breach> breaches) {
        breaches.addAll(new DateRules(LocalDate.now(clock)).check(field, date));
    }

    /** An animal that was registered already has the same dam, the same day of birth and a mark of the same words. */
    private Optional<Breach> likeAnother(
            Standing by, NewAnimal animal, @Nullable Animal dam, List<IdentifierView> identifiers) {
        if (dam == null || animal.born() == null) {
            return Optional.empty();
        }
        var lens = sight.lens(by);
        return Animal.littermates(by.populationId(), dam.id, animal.born()).stream()
                .filter(other -> LOOKS.stream().allMatch(group -> AnimalSight.shows(lens, other, group)))
                .filter(other -> other.sex == animal.sex() || other.sex == Sex.UNKNOWN || animal.sex() == Sex.UNKNOWN)
                .filter(other -> Identifier.of(by.populationId(), other.id).stream()
                        .filter(mark -> mark.kind.equals(Identifier.MARK))
                        .anyMatch(mark -> identifiers.stream().anyMatch(mark.view()::isSame)))
                .findFirst()
                .map(other -> Breach.warning(
                        Rule.LOOKS_LIKE_ANOTHER,
                        "marks",
                        null,
                        "%s was born of %s on %s as well and bears the same mark. If it is the same animal, claim so (same-animal claim); twins from one sac look alike too."
                                .formatted(other.number, dam.number, animal.born()),
                        null));
    }

    /**
     * Finds the parents by number; what is not found, or contradicts itself, is added to the breaches.
     *
     * @param drawId which draw it is where one of several candidates sired a whole litter
     */
    Parents parents(
            Standing by, @Nullable String damNumber, @Nullable StatedSire stated, UUID drawId, List<Breach> breaches) {
        var dam = damNumber == null ? null : parent(by, "dam", damNumber, breaches);
        var sires = new ArrayList<Animal>();
        var sire = sire(by, stated == null ? StatedSire.UNKNOWN : stated, dam, sires, drawId, breaches);
        return new Parents(dam, sires, sire);
    }

    private Sire sire(
            Standing by,
            StatedSire stated,
            @Nullable Animal dam,
            List<Animal> sires,
            UUID drawId,
            List<Breach> breaches) {
        requireOnlyItsOwnFields(stated, breaches);
        switch (stated.kind()) {
            case "known" -> {
                var sire = stated.animal() == null
                        ? missing("sire.animal", "Say which animal the sire is.", breaches)
                        : parent(by, "sire.animal", stated.animal(), breaches);
                if (sire != null) {
                    sires.add(sire);
                    return new Sire.Known(sire.id, stated.inDoubt());
                }
                return new Sire.Unknown();
            }
            case "candidates" -> {
                return candidates(by, stated, sires, drawId, breaches);
            }
            case "none" -> {
                ParentageRules.checkSireless(dam != null).ifPresent(breaches::add);
                var y = Objects.requireNonNullElse(stated.secondDivision(), BigDecimal.ZERO);
                return new Sire.None(
                        Objects.requireNonNullElse(stated.fusion(), "terminal"),
                        y.stripTrailingZeros().toPlainString());
            }
            case "worked-out" -> {
                missing(
                        "sire.kind",
                        "Only the sire of a litter that is registered is worked out; say known, candidates, none or unknown.",
                        breaches);
                return new Sire.Unknown();
            }
            default -> {
                return new Sire.Unknown();
            }
        }
    }

    private Sire candidates(Standing by, StatedSire stated, List<Animal> sires, UUID drawId, List<Breach> breaches) {
        var labels = new ArrayList<String>();
        var probabilities = new ArrayList<BigDecimal>();
        var candidates = new ArrayList<Sire.Candidate>();
        for (var candidate : Objects.requireNonNullElse(stated.candidates(), List.<StatedSire.StatedCandidate>of())) {
            var sire = parent(by, "sire.candidates", candidate.animal(), breaches);
            probabilities.add(candidate.probability());
            if (sire == null) {
                continue;
            }
            labels.add(sire.number);
            sires.add(sire);
            candidates.add(new Sire.Candidate(
                    sire.id, candidate.probability().stripTrailingZeros().toPlainString()));
        }
        if (candidates.isEmpty() && breaches.stream().noneMatch(Breach::isError)) {
            missing("sire.candidates", "Name the males that it may be, with their probabilities.", breaches);
        }
        breaches.addAll(ParentageRules.checkCandidates("sire.candidates", labels, probabilities));
        return new Sire.Candidates(candidates, Boolean.TRUE.equals(stated.wholeLitter()) ? drawId : null);
    }

    private static void requireOnlyItsOwnFields(StatedSire stated, List<Breach> breaches) {
        var foreign = (stated.animal() != null || stated.doubtful() != null)
                        && !stated.kind().equals("known")
                || (stated.candidates() != null || stated.wholeLitter() != null)
                        && !stated.kind().equals("candidates")
                || (stated.fusion() != null || stated.secondDivision() != null)
                        && !stated.kind().equals("none");
        if (foreign) {
            breaches.add(Breach.error(
                    CONTRADICTORY_PARENTAGE,
                    "sire",
                    stated.kind(),
                    "The sire is given as \"%s\" with fields of another kind; known takes animal and doubtful, candidates takes candidates and wholeLitter, none takes fusion and secondDivision."
                            .formatted(stated.kind())));
        }
    }

    private @Nullable Animal parent(Standing by, String field, String typed, List<Breach> breaches) {
        StudbookNumber number;
        try {
            number = StudbookNumber.parse(typed);
        } catch (IllegalArgumentException e) {
            breaches.add(Breach.error(MISTYPED_NUMBER, field, typed, "%s: %s.".formatted(typed, e.getMessage())));
            return null;
        }
        var parent = Animal.numbered(by.populationId(), number.toString())
                .filter(animal -> sight.sees(by, animal))
                .orElse(null);
        if (parent == null) {
            breaches.add(Breach.error(
                    NO_SUCH_PARENT,
                    field,
                    typed,
                    "No animal of %s has the number %s; register the parent first."
                            .formatted(by.populationCode(), number)));
        }
        return parent;
    }

    private static @Nullable Animal missing(String field, String message, List<Breach> breaches) {
        breaches.add(Breach.error(CONTRADICTORY_PARENTAGE, field, null, message));
        return null;
    }

    static @Nullable Kin kin(@Nullable Animal animal) {
        return animal == null ? null : animal.kin();
    }

    static List<Kin> kin(List<Animal> animals) {
        return animals.stream().map(Animal::kin).toList();
    }
}
