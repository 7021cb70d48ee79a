package org.demebook.litter;

import static org.demebook.problem.ProblemType.LITTER_DOES_NOT_ADD_UP;
import static org.demebook.problem.ProblemType.NO_SUCH_PARENT;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.litter.LitterFacts.LitterOutcomeCorrected;
import org.demebook.litter.LitterFacts.LitterRegistered;
import org.demebook.notation.Origin;
import org.demebook.notation.Words;
import org.demebook.problem.Finding;
import org.demebook.registry.AnimalRegistered;
import org.demebook.registry.Animals;
import org.demebook.registry.Breach;
import org.demebook.registry.LeftFindings;
import org.demebook.registry.LeftFindings.LeftView;
import org.demebook.registry.Newborns;
import org.demebook.registry.Newborns.Neonate;
import org.demebook.registry.Sire;
import org.demebook.registry.TwinKind;
import org.demebook.registry.Twins;
import org.demebook.rest.Page;
import org.demebook.rest.Revision;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/** The litters of the populations on this node. */
@ApplicationScoped
public class Litters {
    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Newborns newborns;

    @Inject
    Twins twins;

    @Inject
    LeftFindings leftFindings;

    @Inject
    BreedingRecords breeding;

    @Inject
    LitterChecks checks;

    @Inject
    SeenLitters seen;

    // ── writing ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** Registers a litter and each of its live-born young. Refuses what breaks a rule, telling every breach. */
    @Transactional
    public RegisteredLitter register(Standing by, NewLitter litter) {
        journal.open(by.populationId());
        var held = animals.held(by, litter.dam());
        var dam = animals.standsFor(by.populationId(), held.id());
        var collectionId = litter.collection() == null
                ? Objects.requireNonNull(held.collectionId())
                : keepers.collection(by, litter.collection()).id();
        var id = Journal.newId();
        var outcome = litter.outcome();
        var breaches = outcome.breaches();
        var sire = checks.sire(by, dam, litter, breaches);
        var origin = Objects.requireNonNullElse(litter.origin(), Origin.CAPTIVE_BRED);
        var parentage = checks.lastMet(
                by,
                dam,
                sire,
                litter.born(),
                newborns.parentage(by, dam, sire, origin, litter.born(), id, breaches),
                breaches);
        checks.check(by, id, held, dam, litter.born(), outcome, breaches);
        var neonates = ToldYoung.neonates(litter, outcome, breaches);
        if (!(parentage.sire() instanceof Sire.None)) {
            breaches.addAll(checks.read(by, id, dam, litter.born(), outcome, neonates));
        }
        var young = newborns.facts(by, parentage, litter.born(), id, collectionId, neonates, breaches);
        var warnings = Breach.refuse(breaches, litter.leave());

        journal.record(
                by.populationId(),
                by.keeperId(),
                new LitterRegistered(
                        id,
                        parentage.damId(),
                        parentage.sire(),
                        parentage.origin(),
                        litter.born(),
                        collectionId,
                        outcome,
                        Words.orNull(litter.notes())));
        animals.recordAll(by, young, done -> {});
        for (var two : ToldYoung.twins(litter)) {
            var numbers = two.young().stream()
                    .map(place -> young.get(place).number().toString())
                    .toList();
            twins.state(by, id, numbers.get(0), numbers.get(1), two.kind());
        }
        leftFindings.record(by, LeftFindings.LITTER, id, breaches, litter.leave());
        return registered(by, id, young, warnings);
    }

    /**
     * Corrects the outcome at birth, on the revision that was read; by those who act for the collection that it was born
     * in. More live-born than before are registered as further young.
     */
    @Transactional
    public RegisteredLitter correct(Standing by, UUID litterId, @Nullable String ifMatch, Outcome outcome) {
        journal.open(by.populationId());
        var litter = seen.requireOwn(by, litterId);
        Revision.require(ifMatch, litter.revision);
        var breaches = outcome.breaches();
        int further = outcome.liveBorn() - litter.outcome.liveBorn();
        if (further < 0) {
            breaches.add(Breach.error(
                    LITTER_DOES_NOT_ADD_UP,
                    "liveBorn",
                    outcome.liveBorn(),
                    "%d young of this litter are registered, so the live-born cannot become %d. Did one die, report its death; was one registered twice, declare the two records the same animal."
                            .formatted(litter.outcome.liveBorn(), outcome.liveBorn())));
        }
        int malformed = Math.max(0, outcome.malformedLive() - litter.outcome.malformedLive());
        var neonates = new ArrayList<Neonate>();
        for (int i = 0; i < further; i++) {
            neonates.add(ToldYoung.counted(further - i <= malformed));
        }
        var young =
                newborns.facts(by, litter.parentage(), litter.born, litter.id, litter.collectionId, neonates, breaches);
        Breach.refuse(breaches, null);

        journal.record(
                by.populationId(), by.keeperId(), new LitterOutcomeCorrected(litter.id, outcome, litter.revision));
        animals.recordAll(by, young, done -> {});
        return registered(by, litter.id, young, List.of());
    }

    /** States that two young came from one sac; by those who act for the collection that the litter was born in. */
    @Transactional
    public LitterView stateTwins(Standing by, UUID litterId, List<String> numbers, TwinKind kind) {
        journal.open(by.populationId());
        var litter = seen.requireOwn(by, litterId);
        twins.state(by, litter.id, numbers.get(0), numbers.get(1), kind);
        return seen.view(by, litter);
    }

    /** Takes back that two young came from one sac; by the same. */
    @Transactional
    public LitterView withdrawTwins(Standing by, UUID litterId, List<String> numbers) {
        journal.open(by.populationId());
        var litter = seen.requireOwn(by, litterId);
        twins.withdraw(by, litter.id, numbers.get(0), numbers.get(1));
        return seen.view(by, litter);
    }

    private RegisteredLitter registered(
            Standing by, UUID litterId, List<AnimalRegistered> young, List<Finding> warnings) {
        var ids = young.stream().map(AnimalRegistered::animalId).toList();
        var days = daysFromShed(by, litterId);
        return new RegisteredLitter(
                get(by, litterId), days.isPresent() ? days.getAsInt() : null, animals.views(by, ids), warnings);
    }

    // ── reading ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** Whether the asker sees a litter. */
    @Transactional
    public boolean sees(Standing by, UUID litterId) {
        return seen.find(by, litterId).isPresent();
    }

    /** One litter; refuses with NO_SUCH_LITTER alike when there is none and when it is not for the asker to see. */
    @Transactional
    public LitterView get(Standing by, UUID litterId) {
        return seen.view(by, seen.require(by, litterId));
    }

    /**
     * The litters that the asker sees, the latest registered first.
     *
     * @param damNumber only those of this dam
     * @param after cursor: id of the last one seen
     */
    @Transactional
    public Page<LitterView> page(Standing by, @Nullable String damNumber, @Nullable String after, int limit) {
        var damIds = damNumber == null
                ? null
                : animals.recordsOf(
                        by.populationId(), animals.custody(by, damNumber).id());
        return seen.page(by, damIds, after, limit);
    }

    /** The litters that the asker sees of births on or after a day, the latest registered first. */
    @Transactional
    public List<LitterView> bornSince(Standing by, LocalDate day) {
        return seen.bornSince(by, day);
    }

    /** Whether the asker acts for the collection that a litter was born in, and so may correct it. */
    @Transactional
    public boolean isOwn(Standing by, UUID litterId) {
        return seen.isOwn(by, seen.require(by, litterId));
    }

    /**
     * What is strained about a litter now and was not left as it is, checked anew each time; for who registered it.
     * What its counts and sexes tell is left to the rooms that read them.
     */
    @WholeRegister
    @Transactional
    public List<Finding> findings(Standing by, UUID litterId) {
        var litter = seen.requireOwn(by, litterId);
        var dam = animals.standsFor(by.populationId(), litter.damId);
        var sire = seen.view(by, litter).sire();
        var breaches = new ArrayList<Breach>();
        var parentage = newborns.parentage(by, dam, sire, litter.origin, litter.born, litter.id, breaches);
        checks.lastMet(by, dam, sire, litter.born, parentage, breaches);
        checks.check(by, litter.id, dam, dam, litter.born, litter.outcome, breaches);
        // a parent whose keeper has taken back what they shared is a parent still
        breaches.removeIf(breach -> breach.type() == NO_SUCH_PARENT);
        return leftFindings.unsettled(by.populationId(), List.of(litter.id), breaches).stream()
                .map(Breach::finding)
                .distinct()
                .toList();
    }

    /** What was left as it is about a litter, with the reasons; for who registered it. */
    @Transactional
    public List<LeftView> left(Standing by, UUID litterId) {
        return leftFindings.about(by, List.of(seen.requireOwn(by, litterId).id));
    }

    /** What was stated of its outcome, each time anew, the first first. */
    @Transactional
    public List<LitterVersionView> versions(Standing by, UUID litterId) {
        return seen.versions(by, seen.require(by, litterId));
    }

    /** The males that the dam of a litter met before it, as far as anything is on record. */
    @Transactional
    public List<Mate> mates(Standing by, UUID litterId) {
        var litter = seen.require(by, litterId);
        return breeding.mates(by.populationId(), litter.damId, litter.born);
    }

    /** Days from the dam's post-ovulation shed to the birth; empty where no such shed was noted. */
    @Transactional
    public OptionalInt daysFromShed(Standing by, UUID litterId) {
        var litter = seen.require(by, litterId);
        return breeding.daysFromShed(by.populationId(), litter.damId, litter.born);
    }

    /**
     * The outcomes of the population's other litters, to compare one with; never to be shown. Of the asker's own alone
     * where fewer collections than given bred, so that nobody reads another's litter out of a figure.
     */
    @Transactional
    public List<Outcome> outcomesOfOthers(Standing by, UUID litterId, int fewestCollections) {
        return seen.othersThan(by, seen.require(by, litterId), fewestCollections);
    }
}
