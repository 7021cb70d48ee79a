package org.demebook.breeding;

import static org.demebook.problem.ProblemType.INTRODUCTION_ENDED;
import static org.demebook.problem.ProblemType.INTRODUCTION_OVERLAPS;
import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_SUCH_INTRODUCTION;
import static org.demebook.problem.ProblemType.RECORD_WITHDRAWN;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.demebook.breeding.BreedingFacts.IntroductionCorrected;
import org.demebook.breeding.BreedingFacts.IntroductionEnded;
import org.demebook.breeding.BreedingFacts.IntroductionOpened;
import org.demebook.breeding.BreedingFacts.IntroductionWithdrawn;
import org.demebook.breeding.IntroductionView.RecordedIntroduction;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.Sex;
import org.demebook.notation.Words;
import org.demebook.problem.Refusal;
import org.demebook.problem.Rule;
import org.demebook.registry.Animals;
import org.demebook.registry.Breach;
import org.demebook.registry.Custody;
import org.demebook.registry.Populations;
import org.demebook.registry.Sight;
import org.demebook.rest.Page;
import org.demebook.rest.Revision;
import org.jspecify.annotations.Nullable;

/** Who was put together with whom, from when until when. One male may be with several females at a time. */
@ApplicationScoped
public class Introductions {
    /** Seen by those who act for the collection that recorded it, and by those who hold its female now. */
    static final String SEEN = Sight.writtenOrHeld("femaleId");

    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Sight sight;

    @Inject
    RecordRules rules;

    @Inject
    QuarantineRule quarantine;

    @Inject
    Populations populations;

    // ── writing ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** Records that a male and a female, both in collections of the asker's, were put together. */
    @Transactional
    public RecordedIntroduction open(Standing by, NewIntroduction told) {
        journal.open(by.populationId());
        var female = rules.unmerged(animals.held(by, told.female()));
        var male = rules.unmerged(animals.held(by, told.male()));
        var breaches = new ArrayList<Breach>();
        rules.requireSex(female, Sex.FEMALE, "female", breaches);
        rules.requireSex(male, Sex.MALE, "male", breaches);
        checkSpan(by, null, female, male, told.fromOn(), told.untilOn(), breaches);
        var warnings = Breach.refuse(breaches, null);

        var id = Journal.newId();
        journal.record(
                by.populationId(),
                by.keeperId(),
                new IntroductionOpened(
                        id,
                        female.id(),
                        male.id(),
                        told.fromOn(),
                        told.untilOn(),
                        Objects.requireNonNull(female.collectionId()),
                        Words.orNull(told.notes())));
        return new RecordedIntroduction(view(by, id), warnings);
    }

    /** Records the last day together. Told again the same way it is no error. */
    @Transactional
    public IntroductionView end(Standing by, UUID introductionId, LocalDate untilOn) {
        journal.open(by.populationId());
        var introduction = require(by, introductionId);
        requireNotWithdrawn(introduction);
        if (introduction.untilOn != null && !introduction.untilOn.equals(untilOn)) {
            throw new Refusal(
                    INTRODUCTION_ENDED,
                    "It ended on %s already; if that is wrong, correct it.".formatted(introduction.untilOn));
        }
        if (introduction.untilOn == null) {
            var breaches = new ArrayList<Breach>();
            checkSpan(
                    by,
                    introductionId,
                    animals.custody(by.populationId(), introduction.femaleId),
                    animals.custody(by.populationId(), introduction.maleId),
                    introduction.fromOn,
                    untilOn,
                    breaches);
            Breach.refuse(breaches, null);
            journal.record(by.populationId(), by.keeperId(), new IntroductionEnded(introductionId, untilOn));
        }
        return view(by, introductionId);
    }

    /** Corrects the days, on the revision that was read; the two animals stay: withdraw it if one of them is wrong. */
    @Transactional
    public RecordedIntroduction correct(
            Standing by,
            UUID introductionId,
            @Nullable String ifMatch,
            LocalDate fromOn,
            @Nullable LocalDate untilOn,
            @Nullable String notes) {
        journal.open(by.populationId());
        var introduction = require(by, introductionId);
        requireOwn(by, introduction);
        requireNotWithdrawn(introduction);
        Revision.require(ifMatch, introduction.revision);
        var breaches = new ArrayList<Breach>();
        checkSpan(
                by,
                introductionId,
                animals.custody(by.populationId(), introduction.femaleId),
                animals.custody(by.populationId(), introduction.maleId),
                fromOn,
                untilOn,
                breaches);
        var warnings = Breach.refuse(breaches, null);
        journal.record(
                by.populationId(),
                by.keeperId(),
                new IntroductionCorrected(introductionId, fromOn, untilOn, Words.orNull(notes), introduction.revision));
        return new RecordedIntroduction(view(by, introductionId), warnings);
    }

    /** Takes it back: it never took place. Told again it is no error. */
    @Transactional
    public IntroductionView withdraw(Standing by, UUID introductionId, @Nullable String reason) {
        journal.open(by.populationId());
        var introduction = require(by, introductionId);
        requireOwn(by, introduction);
        if (!introduction.withdrawn) {
            journal.record(
                    by.populationId(),
                    by.keeperId(),
                    new IntroductionWithdrawn(introductionId, Words.orNull(reason), introduction.revision));
        }
        return view(by, introductionId);
    }

    private void checkSpan(
            Standing by,
            @Nullable UUID introductionId,
            Custody female,
            Custody male,
            LocalDate fromOn,
            @Nullable LocalDate untilOn,
            List<Breach> breaches) {
        for (var animal : List.of(female, male)) {
            rules.checkDay(animal, "fromOn", fromOn, breaches);
            if (untilOn != null) {
                rules.checkDay(animal, "untilOn", untilOn, breaches);
            }
        }
        if (untilOn != null && untilOn.isBefore(fromOn)) {
            breaches.add(Breach.error(
                    INVALID_VALUES,
                    "untilOn",
                    untilOn,
                    "They were put together on %s and cannot have been separated on %s; correct one of the two."
                            .formatted(fromOn, untilOn)));
            return;
        }
        for (var other : Introduction.ofFemales(by.populationId(), List.of(female.id()))) {
            if (!other.id.equals(introductionId) && other.overlaps(fromOn, untilOn)) {
                breaches.add(overlap(by, other, female, male, fromOn));
            }
        }
        int usualDays = populations.get(by).profile().daysOfQuarantine();
        for (var animal : List.of(female, male)) {
            quarantine.check(by, animal, fromOn, usualDays).ifPresent(breaches::add);
        }
    }

    private Breach overlap(Standing by, Introduction other, Custody female, Custody male, LocalDate fromOn) {
        var until = other.untilOn == null ? "is not ended" : "ended on " + other.untilOn;
        if (other.maleId.equals(male.id())) {
            return Breach.error(
                    INTRODUCTION_OVERLAPS,
                    "fromOn",
                    fromOn,
                    "%s and %s are recorded together from %s already, which %s; end or correct that one."
                            .formatted(female.number(), male.number(), other.fromOn, until));
        }
        return Breach.notice(
                Rule.TWO_MALES_AT_ONCE,
                "male",
                male.number(),
                "%s is with %s too, from %s, which %s: both will be candidates for her litter. If the males took turns, end the first."
                        .formatted(
                                female.number(),
                                animals.custody(by.populationId(), other.maleId).number(),
                                other.fromOn,
                                until),
                null);
    }

    private void requireOwn(Standing by, Introduction introduction) {
        if (!keepers.actsFor(by.populationId(), by.keeperId(), introduction.collectionId)) {
            throw new Refusal(NOT_ALLOWED, "Only who recorded the introduction changes it; tell them what you know.");
        }
    }

    private static void requireNotWithdrawn(Introduction introduction) {
        if (introduction.withdrawn) {
            throw new Refusal(RECORD_WITHDRAWN, "This introduction was withdrawn; record it anew.");
        }
    }

    // ── reading ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** One introduction; refuses with NO_SUCH_INTRODUCTION alike when there is none and when it is not for the asker. */
    @Transactional
    public IntroductionView get(Standing by, UUID introductionId) {
        return view(by, require(by, introductionId).id);
    }

    /**
     * The introductions that the asker sees, the latest recorded first; those that were withdrawn are left out.
     *
     * @param number only those of this animal, female or male
     * @param open only those that go on, or only those that are over
     * @param after cursor: id of the last one seen
     */
    @Transactional
    public Page<IntroductionView> page(
            Standing by, @Nullable String number, @Nullable Boolean open, @Nullable String after, int limit) {
        var where = new StringBuilder("populationId = :population and withdrawn = false and " + SEEN);
        var parameters = sight.parameters(by);
        if (number != null) {
            where.append(" and (femaleId = :animal or maleId = :animal)");
            parameters.put("animal", animals.custody(by, number).id());
        }
        if (open != null) {
            where.append(open ? " and untilOn is null" : " and untilOn is not null");
        }
        if (after != null) {
            where.append(" and id < :after");
            parameters.put("after", Page.id(after));
        }
        List<Introduction> read = Introduction.<Introduction>find(where + " order by id desc", parameters)
                .page(0, limit + 1)
                .list();
        return Page.of(views(by, read), limit, introduction -> introduction.id().toString());
    }

    private Introduction require(Standing by, UUID introductionId) {
        var parameters = sight.parameters(by);
        parameters.put("id", introductionId);
        return Introduction.<Introduction>find("populationId = :population and id = :id and " + SEEN, parameters)
                .firstResultOptional()
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_INTRODUCTION,
                        "There is no introduction %s among those that you may see.".formatted(introductionId)));
    }

    private IntroductionView view(Standing by, UUID introductionId) {
        return views(by, List.of(Introduction.of(by.populationId(), introductionId)))
                .get(0);
    }

    private List<IntroductionView> views(Standing by, List<Introduction> introductions) {
        var ids = new HashSet<UUID>();
        introductions.forEach(introduction -> ids.addAll(List.of(introduction.femaleId, introduction.maleId)));
        var numbers = animals.numbers(by.populationId(), ids);
        return introductions.stream()
                .map(introduction -> introduction.view(numbers))
                .toList();
    }
}
