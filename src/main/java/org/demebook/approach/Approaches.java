package org.demebook.approach;

import static org.demebook.problem.ProblemType.ANIMAL_NOT_COMPUTED_WITH;
import static org.demebook.problem.ProblemType.APPROACHED_ALREADY;
import static org.demebook.problem.ProblemType.APPROACH_ENDED;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_SUCH_APPROACH;
import static org.demebook.problem.ProblemType.NO_SUCH_PARTNER;
import static org.demebook.problem.ProblemType.ON_LOAN;
import static org.demebook.problem.ProblemType.TOO_MANY_APPROACHES;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.demebook.approach.ApproachFacts.ApproachAgreed;
import org.demebook.approach.ApproachFacts.ApproachProposed;
import org.demebook.approach.ApproachFacts.ApproachRefused;
import org.demebook.approach.ApproachFacts.ApproachWithdrawn;
import org.demebook.consent.AgreedGrants;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.Words;
import org.demebook.planning.ProposedPartners;
import org.demebook.planning.UnnamedPartners;
import org.demebook.problem.Refusal;
import org.demebook.registry.Animals;
import org.demebook.registry.Custody;
import org.demebook.rest.Page;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/**
 * The approaches between keepers of this node. Any keeper who acts for the collection that proposed one stands on the asking
 * side, any who acts for the one that held the partner then on the asked side; to everybody else there is no such approach. An
 * answer that is given again the same way is no error.
 */
@ApplicationScoped
public class Approaches {
    /** In thirty days, whatever becomes of them: pseudonyms are not to be told apart by trial. */
    private static final int MOST_FOR_ONE_ANIMAL = 2;

    private static final int MOST_OF_A_HOUSEHOLD = 5;

    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    UnnamedPartners partners;

    @Inject
    AgreedGrants grants;

    @Inject
    Situations situations;

    @Inject
    ApproachViews views;

    /**
     * Asks the keeper of an unnamed partner. Refuses as {@link UnnamedPartners#of} does for the animal, and with NO_SUCH_PARTNER,
     * ON_LOAN, ANIMAL_NOT_COMPUTED_WITH, APPROACHED_ALREADY or TOO_MANY_APPROACHES. The answer is the same whether anybody can
     * still agree or not.
     */
    @Transactional
    public ApproachView propose(Standing by, NewApproach sent) {
        // worked out before the population is taken
        var proposed = partners.proposed(by, sent.animal());
        journal.open(by.populationId());
        var animal = animals.custody(by.populationId(), proposed.animalId());
        requireItsOwnersWill(animal);
        if (!situations.isComputedByMembers(by, animal)) {
            throw new Refusal(
                    ANIMAL_NOT_COMPUTED_WITH,
                    ("Members may not compute with %s and who its parents are, so the other side would get no figure either."
                                    + " Share it first: the choice compute-only does, or a grant of your own.")
                            .formatted(animal.number()));
        }
        var partner = partner(by, proposed, sent.partner());
        requireWithinBudget(by, animal, sent.partner());
        var id = Journal.newId();
        journal.record(
                by.populationId(),
                by.keeperId(),
                new ApproachProposed(
                        id,
                        proposed.collectionId(),
                        animal.id(),
                        partners.pseudonym(),
                        holder(partner),
                        partner.id(),
                        sent.partner(),
                        Words.orNull(sent.words())));
        return told(by, require(by, id), ApproachSide.ASKING, ApproachState.OPEN);
    }

    private static void requireItsOwnersWill(Custody animal) {
        if (!Objects.equals(animal.collectionId(), animal.ownerCollectionId())) {
            throw new Refusal(
                    ON_LOAN,
                    "%s is on loan to you, and its owner has a say in who learns of it. Ask them to approach the keeper, once it is back."
                            .formatted(animal.number()));
        }
    }

    private Custody partner(Standing by, ProposedPartners proposed, String pseudonym) {
        var partnerId = proposed.partners().get(pseudonym);
        if (partnerId != null) {
            var partner = animals.standsFor(by.populationId(), partnerId);
            var households = keepers.households(by.populationId());
            if (!household(households, holder(partner)).equals(household(households, proposed.collectionId()))) {
                return partner;
            }
        }
        throw new Refusal(
                NO_SUCH_PARTNER,
                "In %s no partner is proposed for %s under the pseudonym %s; ask again for its unnamed partners and take one of those."
                        .formatted(proposed.month(), proposed.animal(), pseudonym));
    }

    /** Who holds it, or owns it while it is on its way; they are then asked in vain. */
    private static UUID holder(Custody partner) {
        return partner.collectionId() == null
                ? Objects.requireNonNull(partner.ownerCollectionId())
                : partner.collectionId();
    }

    private static UUID household(Map<UUID, UUID> households, UUID collectionId) {
        return households.getOrDefault(collectionId, collectionId);
    }

    /** Looked for by pseudonym alone: that two of them are one animal is not to be learnt from a refusal. */
    private void requireWithinBudget(Standing by, Custody animal, String pseudonym) {
        var since = situations.today().minusDays(Approach.DAYS_OPEN);
        var households = keepers.households(by.populationId());
        var own = household(households, Objects.requireNonNull(animal.collectionId()));
        var lately = Approach.proposedAfter(by.populationId(), since).stream()
                .filter(approach -> household(households, approach.collectionId).equals(own))
                .toList();
        var ofAnimal = lately.stream()
                .filter(approach -> approach.animalId.equals(animal.id()))
                .toList();
        for (var approach : ofAnimal) {
            if (approach.partnerPseudonym.equals(pseudonym) && approach.withdrawnOn == null) {
                throw new Refusal(
                        APPROACHED_ALREADY,
                        "The keeper of %s was asked for %s on %s; the answer may take until %s."
                                .formatted(pseudonym, animal.number(), approach.proposedOn, approach.openUntil()));
            }
        }
        if (ofAnimal.size() >= MOST_FOR_ONE_ANIMAL || lately.size() >= MOST_OF_A_HOUSEHOLD) {
            boolean forOne = ofAnimal.size() >= MOST_FOR_ONE_ANIMAL;
            var oldest = (forOne ? ofAnimal : lately)
                    .stream()
                            .map(approach -> approach.proposedOn)
                            .min(LocalDate::compareTo)
                            .orElseThrow();
            throw new Refusal(
                    TOO_MANY_APPROACHES,
                    "%d approaches were made %s in thirty days, which is as many as may be, whatever became of them. Ask again from %s on."
                            .formatted(
                                    forOne ? ofAnimal.size() : lately.size(),
                                    forOne ? "for " + animal.number() : "by your household",
                                    oldest.plusDays(Approach.DAYS_OPEN)));
        }
    }

    /**
     * Agrees, for the collection that was asked: both sides grant each other's keepers to read number and custody of the one
     * animal for twelve months. That of the asking side is given in the name of who proposed, who consented then.
     */
    @Transactional
    public ApproachView agree(Standing by, UUID id) {
        var approach =
                open(by, id, ApproachSide.ASKED, "Only the side that was asked agrees to an approach; wait for them.");
        var state = situations.of(by, List.of(approach)).state(approach, ApproachSide.ASKED);
        if (state != ApproachState.AGREED) {
            requireOpen(by, approach, ApproachSide.ASKED, state);
            var given = new ArrayList<>(give(by.keeperId(), approach, ApproachSide.ASKED, ApproachSide.ASKING));
            given.addAll(give(approach.proposedBy, approach, ApproachSide.ASKING, ApproachSide.ASKED));
            journal.record(by.populationId(), by.keeperId(), new ApproachAgreed(id, given));
        }
        return told(by, approach, ApproachSide.ASKED, ApproachState.AGREED);
    }

    private List<UUID> give(UUID givenBy, Approach approach, ApproachSide from, ApproachSide to) {
        return grants.giveForPair(
                approach.populationId,
                givenBy,
                approach.collectionOf(from),
                approach.animalOf(from),
                approach.collectionOf(to));
    }

    /** Refuses, for the collection that was asked. The other side is not told, and reads after thirty days that nobody agreed. */
    @Transactional
    public ApproachView refuse(Standing by, UUID id) {
        var approach =
                open(by, id, ApproachSide.ASKED, "Only the side that was asked refuses an approach; withdraw it.");
        if (!approach.isRefused()) {
            requireOpen(
                    by,
                    approach,
                    ApproachSide.ASKED,
                    situations.of(by, List.of(approach)).state(approach, ApproachSide.ASKED));
            journal.record(by.populationId(), by.keeperId(), new ApproachRefused(id));
        }
        return told(by, approach, ApproachSide.ASKED, ApproachState.NO_AGREEMENT);
    }

    /** Takes back an approach that is open, by the asking side; or an agreement, by either, with the grants of both. */
    @Transactional
    public ApproachView withdraw(Standing by, UUID id) {
        journal.open(by.populationId());
        var approach = require(by, id);
        var side = side(by, approach);
        if (side == ApproachSide.ASKED && !approach.isAgreed()) {
            throw new Refusal(NOT_ALLOWED, "You were asked and have not agreed; refuse it, or leave it unanswered.");
        }
        var ended = approach.isAgreed() ? ApproachState.ENDED : ApproachState.WITHDRAWN;
        if (approach.withdrawnOn == null) {
            var state = situations.of(by, List.of(approach)).state(approach, side);
            if (state != ApproachState.AGREED) {
                requireOpen(by, approach, side, state);
            }
            grants.withdraw(by.populationId(), by.keeperId(), approach.grants());
            journal.record(by.populationId(), by.keeperId(), new ApproachWithdrawn(id));
        }
        return told(by, approach, side, ended);
    }

    private Approach open(Standing by, UUID id, ApproachSide side, String toTheOther) {
        journal.open(by.populationId());
        var approach = require(by, id);
        if (side(by, approach) != side) {
            throw new Refusal(NOT_ALLOWED, toTheOther);
        }
        return approach;
    }

    private void requireOpen(Standing by, Approach approach, ApproachSide side, ApproachState state) {
        var number = animals.custody(by.populationId(), approach.animalOf(side)).number();
        switch (state) {
            case OPEN -> {}
            case AGREED ->
                throw new Refusal(
                        APPROACH_ENDED,
                        "You agreed to it on %s, and that holds; withdraw the agreement if you want it to end."
                                .formatted(approach.answeredOn));
            case NO_AGREEMENT ->
                throw new Refusal(
                        APPROACH_ENDED,
                        side == ApproachSide.ASKED && approach.isRefused()
                                ? "You refused it on %s; if you want it after all, approach them for %s yourself."
                                        .formatted(approach.answeredOn, number)
                                : "It was open until %s, and nobody agreed by then.".formatted(approach.openUntil()));
            case WITHDRAWN ->
                throw new Refusal(
                        APPROACH_ENDED,
                        "It was taken back, or the animal that it was made for is not there any more; there is nothing to answer.");
            case ENDED ->
                throw new Refusal(
                        APPROACH_ENDED,
                        "It came to its end: an animal died or changed hands, it may not be computed with any more, or an agreement"
                                + " ran out. Look at %s and what you share of it.".formatted(number));
        }
    }

    /** One approach; refuses with NO_SUCH_APPROACH whoever is on neither side. */
    @Transactional
    @WholeRegister
    public ApproachView get(Standing by, UUID id) {
        var own = keepers.collectionIds(by);
        return views.of(by, List.of(require(by, id, own)), own).get(0);
    }

    /**
     * The approaches of the asker's collections, the latest first.
     *
     * @param side only those in which they stand there; null for all
     * @param after cursor: id of the last one seen
     */
    @Transactional
    @WholeRegister
    public Page<ApproachView> page(Standing by, @Nullable ApproachSide side, @Nullable String after, int limit) {
        var own = keepers.collectionIds(by);
        var read = Approach.page(by.populationId(), own, side, after == null ? null : Page.id(after), limit + 1);
        return Page.of(views.of(by, read, own), limit, view -> view.id().toString());
    }

    private ApproachView told(Standing by, Approach approach, ApproachSide side, ApproachState state) {
        return views.told(approach, animals.custody(by.populationId(), approach.animalOf(side)), side, state);
    }

    private Approach require(Standing by, UUID id) {
        return require(by, id, keepers.collectionIds(by));
    }

    private static Approach require(Standing by, UUID id, Set<UUID> own) {
        var approach = Approach.of(by.populationId(), id);
        if (approach == null || approach.sideOf(own) == null) {
            throw new Refusal(
                    NO_SUCH_APPROACH, "You have neither made nor received an approach with the id %s.".formatted(id));
        }
        return approach;
    }

    private ApproachSide side(Standing by, Approach approach) {
        return Objects.requireNonNull(approach.sideOf(keepers.collectionIds(by)));
    }
}
