package org.demebook.planning;

import static org.demebook.problem.ProblemType.TOO_FEW_CONTRIBUTE;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.BitSet;
import java.util.List;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.demebook.ancestry.Ancestries;
import org.demebook.ancestry.Snapshot;
import org.demebook.consent.Purpose;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.kinship.Pedigree;
import org.demebook.planning.GivenPseudonyms.Question;
import org.demebook.problem.Refusal;
import org.demebook.registry.Populations;

/**
 * Proposes partners that their keepers let be computed with and not be seen: a set without names, order and figures. What it
 * gives away, and what not: docs/methods/kinship-under-consent.md.
 */
@ApplicationScoped
public class UnnamedPartners {
    @Inject
    Ancestries ancestries;

    @Inject
    Populations populations;

    @Inject
    Keepers keepers;

    @Inject
    BreedingHolds holds;

    @Inject
    GivenPseudonyms given;

    @Inject
    Clock clock;

    /**
     * At most five partners for an animal of the asker's, worked out once in a calendar month; whose grant ends, leaves at
     * once. Refuses as {@link Planner#partners} does, and with TOO_FEW_CONTRIBUTE where fewer than three other households let
     * animals be computed with so, among which a partner could be found.
     */
    public UnnamedPartnersView of(Standing by, String number) {
        var proposed = proposed(by, number);
        return new UnnamedPartnersView(
                proposed.animal(),
                proposed.month().toString(),
                List.copyOf(proposed.partners().keySet()));
    }

    /** The same for a room that knows who they are and does not tell. */
    public ProposedPartners proposed(Standing by, String number) {
        var at = clock.instant();
        var today = LocalDate.ofInstant(at, ZoneOffset.UTC);
        int daysOfAgeToBreed = populations.get(by).profile().breeding().daysOfAgeToBreed();

        // what the asker says of their own animal is looked at on what they see
        var seen = ancestries.seen(by, at);
        int row = ancestries.row(by, seen, number);
        var own = new OwnAnimals(seen, keepers.collectionIds(by));
        own.requirePairable(
                new Candidates(
                        seen, today, daysOfAgeToBreed, new BitSet(), other -> false, Hindrances.of(holds.in(by, seen))),
                row);

        var computed = ancestries.seen(by, Purpose.PAIRING_COMPUTATION, at);
        var partners = new ComputedPartners(
                new Candidates(
                        computed,
                        today,
                        daysOfAgeToBreed,
                        ComputedPartners.unnamed(computed),
                        other -> false,
                        Hindrances.of(holds.in(by, computed))),
                computed.row(seen.id(row)),
                keepers.households(by.populationId()));
        if (partners.contributingHouseholds() < ComputedPartners.FEWEST_HOUSEHOLDS) {
            throw new Refusal(
                    TOO_FEW_CONTRIBUTE,
                    ("Unnamed partners for %s are looked for where at least %d other households let animals be computed"
                                    + " with among which one could be found; they are fewer now. Ask again when more do.%s")
                            .formatted(
                                    seen.number(row),
                                    ComputedPartners.FEWEST_HOUSEHOLDS,
                                    onOtherNodes(computed)
                                            ? " Animals on other nodes are not among them: their keepers cannot be asked from here."
                                            : ""));
        }
        var month = YearMonth.from(today);
        var question = new Question(
                by.populationId(), Objects.requireNonNull(seen.collection(row)), seen.id(row), month.atDay(1));
        var still = new TreeMap<>(given.get(question, partners::best, at));
        still.values().removeIf(partner -> !stillGranted(computed, computed.row(partner)));
        return new ProposedPartners(seen.id(row), seen.number(row), question.collectionId(), month, still);
    }

    /** A fresh pseudonym. */
    public String pseudonym() {
        return given.pseudonym();
    }

    private static boolean onOtherNodes(Snapshot computed) {
        return IntStream.of(computed.living()).anyMatch(other -> computed.node(other) != null);
    }

    private static boolean stillGranted(Snapshot computed, int row) {
        return row != Pedigree.UNKNOWN && computed.countsParentage(row);
    }
}
