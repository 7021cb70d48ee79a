package org.demebook.litter;

import static org.demebook.problem.ProblemType.LITTER_DOES_NOT_ADD_UP;
import static org.demebook.problem.ProblemType.LITTER_TOO_SOON;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_SUCH_LITTER;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.journal.Journal;
import org.demebook.keeper.CollectionView;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.litter.LitterFacts.LitterOutcomeCorrected;
import org.demebook.litter.LitterFacts.LitterRegistered;
import org.demebook.litter.NewLitter.NewYoung;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.problem.Finding;
import org.demebook.problem.Refusal;
import org.demebook.registry.AnimalRegistered;
import org.demebook.registry.Animals;
import org.demebook.registry.Breach;
import org.demebook.registry.Custody;
import org.demebook.registry.Newborns;
import org.demebook.registry.Newborns.Neonate;
import org.demebook.registry.Populations;
import org.demebook.rest.Page;
import org.demebook.rest.Revision;
import org.jspecify.annotations.Nullable;

/** The litters of the populations on this node. */
@ApplicationScoped
public class Litters {
    /** A litter is seen by those who act for the collection that it was born in, and by those who hold its dam now. */
    private static final String SEEN =
            "(collectionId in :own or damId in (select a.id from Animal a where a.populationId = :population and a.collectionId in :own))";

    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Newborns newborns;

    @Inject
    Populations populations;

    // ── writing ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** Registers a litter and each of its live-born young. Refuses what breaks a rule, telling every breach. */
    @Transactional
    public RegisteredLitter register(Standing by, NewLitter litter) {
        journal.open(by.populationId());
        var dam = animals.held(by, litter.dam());
        var collectionId = litter.collection() == null
                ? Objects.requireNonNull(dam.collectionId())
                : keepers.collection(by, litter.collection()).id();
        var id = Journal.newId();
        var outcome = litter.outcome();
        var breaches = outcome.breaches();
        var origin = Objects.requireNonNullElse(litter.origin(), Origin.CAPTIVE_BRED);
        var parentage = newborns.parentage(by, dam, litter.sire(), origin, litter.born(), id, breaches);
        checkLittersOfDam(by, dam, litter.born(), breaches);
        var neonates = neonates(litter, outcome, breaches);
        var young = newborns.facts(by, parentage, litter.born(), id, collectionId, neonates, breaches);
        var warnings = Breach.refuse(breaches, null);

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
                        blankToNull(litter.notes())));
        return recordYoung(by, id, young, warnings);
    }

    /**
     * Corrects the outcome at birth, on the revision that was read; by those who act for the collection that it was born
     * in. More live-born than before are registered as further young.
     */
    @Transactional
    public RegisteredLitter correct(Standing by, UUID litterId, @Nullable String ifMatch, Outcome outcome) {
        journal.open(by.populationId());
        var litter = require(by, litterId);
        if (!keepers.actsFor(by.populationId(), by.keeperId(), litter.collectionId)) {
            throw new Refusal(NOT_ALLOWED, "Only who registered the litter corrects it; tell them what you know.");
        }
        Revision.require(ifMatch, litter.revision);
        var breaches = outcome.breaches();
        int further = outcome.liveBorn() - litter.liveBorn;
        if (further < 0) {
            breaches.add(Breach.error(
                    LITTER_DOES_NOT_ADD_UP,
                    "liveBorn",
                    outcome.liveBorn(),
                    "%d young of this litter are registered, so the live-born cannot become %d. Did one die, report its death; was one registered twice, declare the two records the same animal."
                            .formatted(litter.liveBorn, outcome.liveBorn())));
        }
        int malformed = Math.max(0, outcome.malformedLive() - litter.malformedLive);
        var neonates = new ArrayList<Neonate>();
        for (int i = 0; i < further; i++) {
            neonates.add(plain(further - i <= malformed));
        }
        var young =
                newborns.facts(by, litter.parentage(), litter.born, litter.id, litter.collectionId, neonates, breaches);
        Breach.refuse(breaches, null);

        journal.record(
                by.populationId(), by.keeperId(), new LitterOutcomeCorrected(litter.id, outcome, litter.revision));
        return recordYoung(by, litter.id, young, List.of());
    }

    private RegisteredLitter recordYoung(
            Standing by, UUID litterId, List<AnimalRegistered> young, List<Finding> warnings) {
        animals.recordAll(by, young, done -> {});
        var ids = young.stream().map(AnimalRegistered::animalId).toList();
        return new RegisteredLitter(get(by, litterId), animals.views(by, ids), warnings);
    }

    /** Two litters of one dam that are certainly closer than her taxon's figure allows. */
    private void checkLittersOfDam(Standing by, Custody dam, RoughDate born, List<Breach> breaches) {
        int daysBetween = populations.get(by).profile().breeding().daysBetweenLitters();
        for (var other : Litter.ofDam(by.populationId(), dam.id())) {
            var mostDays = mostDaysBetween(born, other.born);
            if (mostDays != null && mostDays < daysBetween) {
                breaches.add(Breach.error(
                        LITTER_TOO_SOON,
                        "born",
                        born,
                        "%s has a litter of %s already (%s, %d live-born); one of %s would be at most %d days from it, and two litters of one dam are at least %d days apart. Is it the same litter, or another dam?"
                                .formatted(
                                        dam.number(),
                                        other.born,
                                        other.id,
                                        other.liveBorn,
                                        born,
                                        mostDays,
                                        daysBetween)));
            }
        }
    }

    /** Null where a date is open to one side. */
    private static @Nullable Long mostDaysBetween(RoughDate one, RoughDate other) {
        if (one.earliest() == null || one.latest() == null || other.earliest() == null || other.latest() == null) {
            return null;
        }
        return Math.max(
                Math.abs(ChronoUnit.DAYS.between(one.earliest(), other.latest())),
                Math.abs(ChronoUnit.DAYS.between(other.earliest(), one.latest())));
    }

    private static List<Neonate> neonates(NewLitter litter, Outcome outcome, List<Breach> breaches) {
        var told = Objects.requireNonNullElse(litter.young(), List.<NewYoung>of());
        if (told.size() > outcome.liveBorn()) {
            breaches.add(Breach.error(
                    LITTER_DOES_NOT_ADD_UP,
                    "young",
                    told.size(),
                    "%d young are told one by one, but %d were live-born: %d too many."
                            .formatted(told.size(), outcome.liveBorn(), told.size() - outcome.liveBorn())));
            return List.of();
        }
        var malformed = malformed(told, outcome, breaches);
        var neonates = new ArrayList<Neonate>();
        for (int i = 0; i < outcome.liveBorn(); i++) {
            neonates.add(i < told.size() ? neonate(told.get(i), malformed[i]) : plain(malformed[i]));
        }
        return neonates;
    }

    /** Which of the live-born are malformed: those that are told, and the last ones for those that are counted only. */
    private static boolean[] malformed(List<NewYoung> told, Outcome outcome, List<Breach> breaches) {
        var malformed = new boolean[outcome.liveBorn()];
        int left = outcome.malformedLive();
        for (int i = 0; i < told.size(); i++) {
            malformed[i] = Boolean.TRUE.equals(told.get(i).malformed());
            left -= malformed[i] ? 1 : 0;
        }
        for (int i = malformed.length - 1; i >= 0 && left > 0; i--) {
            if (i >= told.size() || told.get(i).malformed() == null) {
                malformed[i] = true;
                left--;
            }
        }
        if (left != 0 && outcome.malformedLive() <= outcome.liveBorn()) {
            breaches.add(Breach.error(
                    LITTER_DOES_NOT_ADD_UP,
                    "malformedLive",
                    outcome.malformedLive(),
                    "%d of the live-born are counted as malformed, but %d are told one by one; which is right?"
                            .formatted(outcome.malformedLive(), outcome.malformedLive() - left)));
        }
        return malformed;
    }

    private static Neonate neonate(NewYoung young, boolean malformed) {
        return new Neonate(
                Objects.requireNonNullElse(young.sex(), Sex.UNKNOWN),
                malformed,
                young.ownReference(),
                Objects.requireNonNullElse(young.marks(), List.of()),
                blankToNull(young.notes()));
    }

    private static Neonate plain(boolean malformed) {
        return new Neonate(Sex.UNKNOWN, malformed, null, List.of(), null);
    }

    private static @Nullable String blankToNull(@Nullable String text) {
        return text == null || text.isBlank() ? null : text.strip();
    }

    // ── reading ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** One litter; refuses with NO_SUCH_LITTER alike when there is none and when it is not for the asker to see. */
    @Transactional
    public LitterView get(Standing by, UUID litterId) {
        return views(by, List.of(require(by, litterId))).get(0);
    }

    /**
     * The litters that the asker sees, the latest registered first.
     *
     * @param damNumber only those of this dam
     * @param after cursor: id of the last one seen
     */
    @Transactional
    public Page<LitterView> page(Standing by, @Nullable String damNumber, @Nullable String after, int limit) {
        var where = new StringBuilder("populationId = :population and " + SEEN);
        var parameters = parameters(by);
        if (damNumber != null) {
            where.append(" and damId = :dam");
            parameters.put("dam", animals.custody(by, damNumber).id());
        }
        if (after != null) {
            where.append(" and id < :after");
            parameters.put("after", Page.id(after));
        }
        List<Litter> read = Litter.<Litter>find(where + " order by id desc", parameters)
                .page(0, limit + 1)
                .list();
        return Page.of(views(by, read), limit, litter -> litter.id().toString());
    }

    /** The litters that the asker sees of births on or after a day, the latest registered first. */
    @Transactional
    public List<LitterView> bornSince(Standing by, LocalDate day) {
        var parameters = parameters(by);
        parameters.put("day", day);
        return views(
                by,
                Litter.list(
                        "populationId = :population and bornLatest >= :day and " + SEEN + " order by id desc",
                        parameters));
    }

    private Litter require(Standing by, UUID litterId) {
        var parameters = parameters(by);
        parameters.put("id", litterId);
        return Litter.<Litter>find("populationId = :population and id = :id and " + SEEN, parameters)
                .firstResultOptional()
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_LITTER, "There is no litter %s among those that you may see.".formatted(litterId)));
    }

    private Map<String, Object> parameters(Standing by) {
        var parameters = new HashMap<String, Object>();
        parameters.put("population", by.populationId());
        parameters.put(
                "own", keepers.collections(by).stream().map(CollectionView::id).toList());
        return parameters;
    }

    private List<LitterView> views(Standing by, List<Litter> litters) {
        var parents = new HashSet<UUID>();
        litters.forEach(litter -> {
            parents.add(litter.damId);
            parents.addAll(litter.sire.animalIds());
        });
        var numbers = animals.numbers(by.populationId(), parents);
        var young = animals.numbersOfLitters(
                by.populationId(), litters.stream().map(litter -> litter.id).collect(Collectors.toSet()));
        return litters.stream()
                .map(litter -> litter.view(numbers, young.getOrDefault(litter.id, List.of())))
                .toList();
    }
}
