package org.demebook.registry;

import static org.demebook.problem.ProblemType.CONTRADICTORY_PARENTAGE;
import static org.demebook.problem.ProblemType.INVALID_TRANSPONDER;
import static org.demebook.problem.ProblemType.MISTYPED_NUMBER;
import static org.demebook.problem.ProblemType.NO_SUCH_PARENT;
import static org.demebook.problem.ProblemType.REFERENCE_TAKEN;
import static org.demebook.problem.ProblemType.TRANSPONDER_TAKEN;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.RoughDate;
import org.demebook.notation.StudbookNumber;
import org.demebook.notation.Transponder;
import org.demebook.problem.Finding;
import org.jspecify.annotations.Nullable;

/** Checks what is stated of an animal and turns it into the fact to be recorded; collects every breach before it refuses. */
@ApplicationScoped
class Registration {
    /** A fact that may be recorded, and what is worth a second look. */
    record Checked(AnimalRegistered fact, List<Finding> warnings) {}

    /** Parents found in the register. */
    record Parents(@Nullable Animal dam, List<Animal> sires, Sire sire) {}

    @Inject
    Keepers keepers;

    @Inject
    Journal journal;

    @Inject
    Clock clock;

    Checked check(Standing by, NewAnimal animal) {
        var breaches = new ArrayList<Breach>();
        var number = new StudbookNumber(
                by.populationCode(), journal.nodeCode(), SerialCounter.last(by.populationId(), journal.nodeCode()) + 1);
        var collection = keepers.collection(by, animal.collection());
        var young = new Kin("The animal", animal.sex(), animal.born(), animal.died());
        checkPast("born", animal.born(), breaches);
        checkPast("died", animal.died(), breaches);
        var parents = parents(by, animal.dam(), animal.sire(), Journal.newId(), breaches);
        breaches.addAll(rules(by).check(young, animal.origin(), kin(parents.dam()), kin(parents.sires())));
        var identifiers = identifiers(by, animal, collection.id(), breaches);
        var warnings = Breach.refuse(breaches, null);
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
                        animal.notes()),
                warnings);
    }

    ParentageRules rules(Standing by) {
        Population population = Population.findById(by.populationId());
        return new ParentageRules(population.profile);
    }

    void checkPast(String field, @Nullable RoughDate date, List<Breach> breaches) {
        ParentageRules.checkPast(field, date, LocalDate.now(clock)).ifPresent(breaches::add);
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
                    return new Sire.Known(sire.id);
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
        var foreign = stated.animal() != null && !stated.kind().equals("known")
                || (stated.candidates() != null || stated.wholeLitter() != null)
                        && !stated.kind().equals("candidates")
                || (stated.fusion() != null || stated.secondDivision() != null)
                        && !stated.kind().equals("none");
        if (foreign) {
            breaches.add(Breach.error(
                    CONTRADICTORY_PARENTAGE,
                    "sire",
                    stated.kind(),
                    "The sire is given as \"%s\" with fields of another kind; known takes animal, candidates takes candidates and wholeLitter, none takes fusion and secondDivision."
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
        var parent = Animal.numbered(by.populationId(), number.toString()).orElse(null);
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

    private List<IdentifierView> identifiers(Standing by, NewAnimal animal, UUID collectionId, List<Breach> breaches) {
        var identifiers = new ArrayList<IdentifierView>();
        for (var code : Objects.requireNonNullElse(animal.transponders(), List.<String>of())) {
            identifiers.add(new IdentifierView(Identifier.TRANSPONDER, code));
        }
        for (var mark : Objects.requireNonNullElse(animal.marks(), List.<String>of())) {
            identifiers.add(new IdentifierView(Identifier.MARK, mark));
        }
        if (animal.ownReference() != null) {
            identifiers.add(new IdentifierView(Identifier.OWN_REFERENCE, animal.ownReference()));
        }
        return identifiers.stream()
                .map(identifier -> identifier(by, identifier, collectionId, breaches))
                .distinct()
                .toList();
    }

    /** The identifier in the form that is stored; what is not free or not valid is added to the breaches. */
    IdentifierView identifier(Standing by, IdentifierView stated, UUID collectionId, List<Breach> breaches) {
        var populationId = by.populationId();
        switch (stated.kind()) {
            case Identifier.TRANSPONDER -> {
                try {
                    var transponder = Transponder.parse(stated.value());
                    Identifier.carrier(populationId, transponder.code())
                            .ifPresent(carrier -> breaches.add(Breach.error(
                                    TRANSPONDER_TAKEN,
                                    "transponders",
                                    transponder,
                                    transponder.carriedBy(carrier.number))));
                    return new IdentifierView(Identifier.TRANSPONDER, transponder.code());
                } catch (IllegalArgumentException e) {
                    breaches.add(Breach.error(
                            INVALID_TRANSPONDER,
                            "transponders",
                            stated.value(),
                            "%s: %s.".formatted(stated.value(), e.getMessage())));
                    return stated;
                }
            }
            case Identifier.OWN_REFERENCE -> {
                var reference = stated.value().strip();
                Identifier.reference(populationId, collectionId, reference)
                        .ifPresent(taken -> breaches.add(Breach.error(
                                REFERENCE_TAKEN,
                                "ownReference",
                                reference,
                                "You call %s \"%s\" already; choose another reference."
                                        .formatted(Animal.of(populationId, taken.animalId).number, reference))));
                return new IdentifierView(Identifier.OWN_REFERENCE, reference);
            }
            default -> {
                return new IdentifierView(Identifier.MARK, stated.value().strip());
            }
        }
    }

    static @Nullable Kin kin(@Nullable Animal animal) {
        return animal == null ? null : animal.kin();
    }

    static List<Kin> kin(List<Animal> animals) {
        return animals.stream().map(Animal::kin).toList();
    }
}
