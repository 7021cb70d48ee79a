package org.demebook.breeding;

import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_SUCH_BREEDING_SIGN;
import static org.demebook.problem.ProblemType.RECORD_WITHDRAWN;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.demebook.breeding.BreedingFacts.BreedingSignCorrected;
import org.demebook.breeding.BreedingFacts.BreedingSignNoted;
import org.demebook.breeding.BreedingFacts.BreedingSignWithdrawn;
import org.demebook.breeding.BreedingFacts.Seen;
import org.demebook.breeding.BreedingSignView.NotedBreedingSign;
import org.demebook.gestation.HowKnown;
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
import org.demebook.taxon.BirthMode;
import org.jspecify.annotations.Nullable;

/** What was seen of the females' cycles. */
@ApplicationScoped
public class BreedingSigns {
    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Sight sight;

    @Inject
    Populations populations;

    @Inject
    RecordRules rules;

    // ── writing ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** Notes a sign on a female in a collection of the asker's. */
    @Transactional
    public NotedBreedingSign note(Standing by, String number, NewBreedingSign told) {
        journal.open(by.populationId());
        var female = rules.unmerged(animals.held(by, number));
        var breaches = new ArrayList<Breach>();
        rules.requireSex(female, Sex.FEMALE, "kind", breaches);
        var seen = seen(by, null, female, told, breaches);
        var warnings = Breach.refuse(breaches, null);
        var id = Journal.newId();
        journal.record(
                by.populationId(),
                by.keeperId(),
                new BreedingSignNoted(id, female.id(), seen, Objects.requireNonNull(female.collectionId())));
        return new NotedBreedingSign(view(by, id), warnings);
    }

    /** Corrects a sign, on the revision that was read: what is sent takes the place of what was noted. */
    @Transactional
    public NotedBreedingSign correct(Standing by, UUID signId, @Nullable String ifMatch, NewBreedingSign told) {
        journal.open(by.populationId());
        var sign = require(by, signId);
        requireOwn(by, sign);
        if (sign.withdrawn) {
            throw new Refusal(RECORD_WITHDRAWN, "This sign was withdrawn; note it anew.");
        }
        Revision.require(ifMatch, sign.revision);
        var breaches = new ArrayList<Breach>();
        var seen = seen(by, signId, animals.custody(by.populationId(), sign.femaleId), told, breaches);
        var warnings = Breach.refuse(breaches, null);
        journal.record(by.populationId(), by.keeperId(), new BreedingSignCorrected(signId, seen, sign.revision));
        return new NotedBreedingSign(view(by, signId), warnings);
    }

    /** Takes a sign back: it was not so. Told again it is no error. */
    @Transactional
    public BreedingSignView withdraw(Standing by, UUID signId, @Nullable String reason) {
        journal.open(by.populationId());
        var sign = require(by, signId);
        requireOwn(by, sign);
        if (!sign.withdrawn) {
            journal.record(
                    by.populationId(),
                    by.keeperId(),
                    new BreedingSignWithdrawn(signId, Words.orNull(reason), sign.revision));
        }
        return view(by, signId);
    }

    /** What was told, checked; the male is looked up. */
    private Seen seen(Standing by, @Nullable UUID signId, Custody female, NewBreedingSign told, List<Breach> breaches) {
        rules.checkDay(female, "happenedOn", told.happenedOn(), breaches);
        var male = told.male() == null ? null : animals.custody(by, told.male());
        if (male != null) {
            rules.requireSex(male, Sex.MALE, "male", breaches);
            rules.checkDay(male, "happenedOn", told.happenedOn(), breaches);
        }
        var howKnown = Objects.requireNonNullElse(told.howKnown(), HowKnown.SEEN);
        checkForm(told, howKnown, breaches);
        checkAgainstCycle(by, signId, female, told, breaches);
        return new Seen(
                told.kind(),
                told.happenedOn(),
                told.happenedAt() == null ? null : told.happenedAt().truncatedTo(ChronoUnit.MILLIS),
                howKnown,
                male == null ? null : male.id(),
                told.eggs(),
                Words.orNull(told.notes()));
    }

    /** What belongs to one kind of sign alone. */
    private static void checkForm(NewBreedingSign told, HowKnown howKnown, List<Breach> breaches) {
        if (told.male() != null && told.kind() != SignKind.COPULATION) {
            breaches.add(Breach.error(INVALID_VALUES, "male", told.male(), "Only a copulation has a male."));
        }
        if (told.eggs() != null && told.kind() != SignKind.LAYING) {
            breaches.add(Breach.error(INVALID_VALUES, "eggs", told.eggs(), "Only a laying has eggs."));
        }
        if (howKnown == HowKnown.SKIN_FOUND && told.kind() != SignKind.POST_OVULATION_SHED) {
            breaches.add(Breach.error(
                    INVALID_VALUES, "howKnown", howKnown.word(), "Only a shed leaves a skin: write seen or guessed."));
        }
        if (told.happenedAt() != null && !told.kind().isLabour()) {
            breaches.add(Breach.error(
                    INVALID_VALUES, "happenedAt", told.happenedAt(), "Only labour is told by the hour; give the day."));
        } else if (told.happenedAt() != null) {
            var noon = told.happenedOn().atTime(12, 0).toInstant(ZoneOffset.UTC);
            // a local day begins and ends up to 14 hours from that of UTC
            if (Duration.between(noon, told.happenedAt()).abs().compareTo(Duration.ofHours(26)) > 0) {
                breaches.add(Breach.error(
                        INVALID_VALUES,
                        "happenedAt",
                        told.happenedAt(),
                        "%s is not on %s anywhere on earth; correct one of the two."
                                .formatted(told.happenedAt(), told.happenedOn())));
            }
        }
    }

    private void checkAgainstCycle(
            Standing by, @Nullable UUID signId, Custody female, NewBreedingSign told, List<Breach> breaches) {
        var laysEggs = populations.get(by).birthMode() == BirthMode.EGG_LAYING;
        if (told.kind() == SignKind.LAYING && !laysEggs) {
            breaches.add(Breach.warning(
                    Rule.LAYING_OF_LIVE_BEARER,
                    "kind",
                    told.kind().word(),
                    "The females of this population bear their young; a clutch of unfertilised ova is registered as a litter.",
                    null));
        }
        for (var other : BreedingSign.ofFemales(by.populationId(), List.of(female.id()))) {
            long days = Math.abs(ChronoUnit.DAYS.between(other.happenedOn, told.happenedOn()));
            if (!other.id.equals(signId) && other.kind == told.kind() && days <= DAYS_OF_ONE_CYCLE) {
                oneOfTwo(female, other, told, breaches);
            }
        }
    }

    /** Signs of one kind that are so close together belong to one cycle, in which there is one of each. */
    private static final int DAYS_OF_ONE_CYCLE = 90;

    private static void oneOfTwo(Custody female, BreedingSign other, NewBreedingSign told, List<Breach> breaches) {
        switch (told.kind()) {
            case COPULATION -> {}
            case POST_OVULATION_SHED ->
                breaches.add(Breach.warning(
                        Rule.SIGN_NOTED_TWICE,
                        "happenedOn",
                        told.happenedOn(),
                        "%s has a post-ovulation shed on %s too. Only one follows an ovulation: was one of them an ordinary shed? Withdraw it."
                                .formatted(female.number(), other.happenedOn),
                        other.howKnown == HowKnown.GUESSED
                                ? "The one of %s was guessed, and is likelier wrong.".formatted(other.happenedOn)
                                : null));
            case OVULATION, LAYING, LABOUR_STARTED, LABOUR_FINISHED ->
                breaches.add(Breach.warning(
                        Rule.SIGN_NOTED_TWICE,
                        "happenedOn",
                        told.happenedOn(),
                        "%s has %s on %s too: is it the same? Withdraw one of the two."
                                .formatted(female.number(), other.kind.spoken(), other.happenedOn),
                        null));
        }
    }

    private void requireOwn(Standing by, BreedingSign sign) {
        if (!keepers.actsFor(by.populationId(), by.keeperId(), sign.collectionId)) {
            throw new Refusal(NOT_ALLOWED, "Only who noted the sign changes it; tell them what you know.");
        }
    }

    // ── reading ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** One sign; refuses with NO_SUCH_BREEDING_SIGN alike when there is none and when it is not for the asker. */
    @Transactional
    public BreedingSignView get(Standing by, UUID signId) {
        return view(by, require(by, signId).id);
    }

    /**
     * The signs of a female that the asker sees, the latest noted first; those that were withdrawn are left out.
     *
     * @param after cursor: id of the last one seen
     */
    @Transactional
    public Page<BreedingSignView> page(Standing by, String number, @Nullable String after, int limit) {
        var where = "populationId = :population and femaleId = :female and withdrawn = false and " + Introductions.SEEN;
        var parameters = sight.parameters(by);
        parameters.put("female", animals.custody(by, number).id());
        if (after != null) {
            where += " and id < :after";
            parameters.put("after", Page.id(after));
        }
        List<BreedingSign> read = BreedingSign.<BreedingSign>find(where + " order by id desc", parameters)
                .page(0, limit + 1)
                .list();
        return Page.of(views(by, read), limit, sign -> sign.id().toString());
    }

    private BreedingSign require(Standing by, UUID signId) {
        var parameters = sight.parameters(by);
        parameters.put("id", signId);
        return BreedingSign.<BreedingSign>find(
                        "populationId = :population and id = :id and " + Introductions.SEEN, parameters)
                .firstResultOptional()
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_BREEDING_SIGN,
                        "There is no breeding sign %s among those that you may see.".formatted(signId)));
    }

    private BreedingSignView view(Standing by, UUID signId) {
        return views(by, List.of(BreedingSign.of(by.populationId(), signId))).get(0);
    }

    private List<BreedingSignView> views(Standing by, List<BreedingSign> signs) {
        var ids = new HashSet<UUID>();
        for (var sign : signs) {
            ids.add(sign.femaleId);
            if (sign.maleId != null) {
                ids.add(sign.maleId);
            }
        }
        var numbers = animals.numbers(by.populationId(), ids);
        return signs.stream().map(sign -> sign.view(numbers)).toList();
    }
}
