package org.demebook.transfer;

import static org.demebook.problem.ProblemType.ANIMAL_IN_DISPUTE;
import static org.demebook.problem.ProblemType.DISPUTE_ENDED;
import static org.demebook.problem.ProblemType.NOTHING_TO_DISPUTE;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_SUCH_DISPUTE;
import static org.demebook.problem.ProblemType.NO_SUCH_TRANSFER;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.demebook.journal.Fact;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.Words;
import org.demebook.problem.Refusal;
import org.demebook.registry.Animals;
import org.demebook.registry.AwayAnimals;
import org.demebook.registry.Breach;
import org.demebook.registry.Custody;
import org.demebook.rest.Page;
import org.demebook.transfer.DisputeFacts.AnimalDisputed;
import org.demebook.transfer.DisputeFacts.DisputeConceded;
import org.demebook.transfer.DisputeFacts.DisputeSettled;
import org.demebook.transfer.DisputeFacts.DisputeWithdrawn;
import org.demebook.transfer.TransferFacts.TransferExpired;
import org.demebook.transfer.TransferFacts.TransferWithdrawn;
import org.jspecify.annotations.Nullable;

/**
 * An animal that is reported in two places: the register has it in one, and a keeper who gave it or received it before has
 * it in another. Until that is settled it does not change hands and counts for neither.
 *
 * <p>Whoever was never on a side of a transfer of the animal has nothing to report, and sees no dispute.
 */
@ApplicationScoped
public class Disputes {
    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Parties parties;

    @Inject
    DisputeViews views;

    @Inject
    Days days;

    @Inject
    AwayAnimals awayAnimals;

    // ── it is reported ───────────────────────────────────────────────────────────────────────────────────────────────

    /** Reports an animal in a collection of the asker's; refuses with NO_SUCH_TRANSFER who never gave or received it. */
    @Transactional
    public DisputeView report(Standing by, String number, NewDispute report) {
        journal.open(by.populationId());
        var animal = parties.known(by, number);
        var own = parties.lastOfTheirs(by, animal.id())
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_TRANSFER,
                        "There is no transfer of %s that you gave or received; a place is disputed by those who did."
                                .formatted(animal.number())));
        Transfers.requireNotMerged(animal);
        requireUndisputed(animal);
        requireElsewhere(by, animal, own);
        awayAnimals.requireHere(by.populationId(), animal.id());
        var breaches = new ArrayList<Breach>();
        days.checkSeen(report.seenOn(), animal, parties.gives(by, own) ? own.handedOverOn : null, breaches);
        Breach.refuse(breaches, null);

        var into = keepers.collection(by, report.collection()).id();
        var id = Journal.newId();
        awayAnimals.takeBack(by, animal.id(), "it is reported in two places");
        journal.record(
                by.populationId(),
                by.keeperId(),
                new AnimalDisputed(
                        id,
                        animal.id(),
                        parties.standing(by.populationId(), animal.id()).get(0).id,
                        into,
                        ownerThere(by, own, into),
                        registered(by.populationId(), animal),
                        Objects.requireNonNull(animal.ownerCollectionId()),
                        report.seenOn(),
                        Words.orNull(report.note())));
        return views.of(by, Dispute.of(by.populationId(), id));
    }

    /** Refuses with ANIMAL_IN_DISPUTE; says nothing of the sides. */
    static void requireUndisputed(Custody animal) {
        if (animal.disputeId() != null) {
            throw new Refusal(
                    ANIMAL_IN_DISPUTE,
                    "%s is reported in two places. It changes hands again when that is settled: the one who reported it takes it back, the other side concedes, or a coordinator decides; ask one of them."
                            .formatted(animal.number()));
        }
    }

    /** Where the register agrees, or agrees after one step that the asker can take, there is nothing to dispute. */
    private void requireElsewhere(Standing by, Custody animal, Transfer own) {
        var held = animal.collectionId();
        if (held != null && keepers.actsFor(by.populationId(), by.keeperId(), held)) {
            throw new Refusal(
                    NOTHING_TO_DISPUTE,
                    "The register has %s in a collection of yours too; nobody says otherwise."
                            .formatted(animal.number()));
        }
        if (own.state == State.HANDED_OUT && parties.gives(by, own)) {
            throw new Refusal(
                    NOTHING_TO_DISPUTE,
                    "You handed %s out in transfer %s, and nobody has claimed it; withdraw that transfer, and it is with you."
                            .formatted(animal.number(), own.id));
        }
        if (own.state == State.OFFERED) {
            throw new Refusal(
                    NOTHING_TO_DISPUTE,
                    "%s is offered to you in transfer %s; accept that one, and it is with you."
                            .formatted(animal.number(), own.id));
        }
    }

    /** Whose the animal is if it is with the asker: as it was when they last had it, before they gave it or since. */
    private UUID ownerThere(Standing by, Transfer own, UUID into) {
        if (parties.gives(by, own)) {
            return own.kind == Kind.LOAN_RETURN ? Objects.requireNonNull(own.toCollectionId) : into;
        }
        return own.kind == Kind.BREEDING_LOAN ? own.fromCollectionId : into;
    }

    private static UUID registered(UUID populationId, Custody animal) {
        return animal.collectionId() != null
                ? animal.collectionId()
                : Transfer.of(populationId, Objects.requireNonNull(animal.transferId())).fromCollectionId;
    }

    // ── it is settled ────────────────────────────────────────────────────────────────────────────────────────────────

    /** Takes a report back, for the side that made it: the animal is where the register has it. */
    @Transactional
    public DisputeView withdraw(Standing by, UUID disputeId, Ending ending) {
        var dispute = open(by, disputeId);
        if (!actsFor(by, dispute.reportedCollectionId)) {
            throw new Refusal(NOT_ALLOWED, "Only the side that reported it takes it back; the other side concedes.");
        }
        if (dispute.state != DisputeState.WITHDRAWN) {
            requireOpen(dispute);
            record(by, new DisputeWithdrawn(disputeId, Words.orNull(ending.reason())));
        }
        return views.of(by, dispute);
    }

    /**
     * Agrees that the animal is where it was reported, and it moves there. For who holds it by the register, or for its
     * owner where it would become somebody else's: a borrower does not give away what is lent.
     */
    @Transactional
    public DisputeView concede(Standing by, UUID disputeId, Ending ending) {
        var dispute = open(by, disputeId);
        if (!actsFor(by, conceding(dispute))) {
            throw new Refusal(
                    NOT_ALLOWED,
                    "Only the keeper who has it by the register concedes, or its owner when it is on loan; whoever reported it takes it back.");
        }
        if (dispute.state != DisputeState.CONCEDED) {
            requireOpen(dispute);
            endOpenTransfer(by, dispute, ending.reason());
            record(by, new DisputeConceded(disputeId, Words.orNull(ending.reason())));
        }
        return views.of(by, dispute);
    }

    private UUID conceding(Dispute dispute) {
        var ownersLoss = !dispute.registeredOwnerCollectionId.equals(dispute.reportedOwnerCollectionId)
                && !keepers.actsFor(dispute.populationId, dispute.reportedBy, dispute.registeredOwnerCollectionId);
        return ownersLoss ? dispute.registeredOwnerCollectionId : dispute.registeredCollectionId;
    }

    /** Decides for one of the two sides; for a coordinator who is on neither. */
    @Transactional
    public DisputeView settle(Standing by, UUID disputeId, Settlement settlement) {
        var dispute = open(by, disputeId);
        Keepers.requireCoordinator(by);
        if (views.isSide(by, dispute)) {
            throw new Refusal(
                    NOT_ALLOWED, "You are on a side of it; a coordinator who is not decides, or the sides agree.");
        }
        if (dispute.state != settlement.outcome().state()) {
            requireOpen(dispute);
            if (settlement.outcome().state().movedIt()) {
                endOpenTransfer(by, dispute, settlement.reason());
            }
            record(
                    by,
                    new DisputeSettled(
                            disputeId, settlement.outcome(), settlement.reason().strip()));
        }
        return views.of(by, dispute);
    }

    /** What is elsewhere can neither be claimed nor accepted: its transfer has come to nothing. */
    private void endOpenTransfer(Standing by, Dispute dispute, @Nullable String reason) {
        Transfer.openOf(by.populationId(), dispute.animalId).ifPresent(transfer -> {
            ClaimCode.deleteById(transfer.id);
            if (transfer.due(days.now())) {
                journal.record(by.populationId(), transfer.offeredBy, new TransferExpired(transfer.id));
            } else {
                record(by, new TransferWithdrawn(transfer.id, Words.orNull(reason)));
            }
        });
    }

    // ── it is seen ───────────────────────────────────────────────────────────────────────────────────────────────────

    /** One dispute, for its sides and for coordinators; refuses everybody else with NO_SUCH_DISPUTE. */
    @Transactional
    public DisputeView get(Standing by, UUID disputeId) {
        return views.of(by, require(by, disputeId));
    }

    /** The disputes over an animal that the asker sees, the latest first. */
    @Transactional
    public List<DisputeView> about(Standing by, String number) {
        var animal = parties.known(by, number);
        return views.of(
                by,
                Dispute.about(by.populationId(), animal.id()).stream()
                        .filter(dispute -> sees(by, dispute))
                        .toList());
    }

    /**
     * The disputes that the asker sees, the latest first.
     *
     * @param after cursor: id of the last one seen
     */
    @Transactional
    public Page<DisputeView> page(Standing by, @Nullable DisputeState state, @Nullable String after, int limit) {
        return views.page(by, state, after, limit);
    }

    private Dispute open(Standing by, UUID disputeId) {
        journal.open(by.populationId());
        return require(by, disputeId);
    }

    private Dispute require(Standing by, UUID disputeId) {
        return views.seen(by, disputeId)
                .orElseThrow(() ->
                        new Refusal(NO_SUCH_DISPUTE, "There is no dispute %s that concerns you.".formatted(disputeId)));
    }

    private boolean sees(Standing by, Dispute dispute) {
        return by.isCoordinator() || views.isSide(by, dispute);
    }

    private boolean actsFor(Standing by, UUID collectionId) {
        return keepers.actsFor(by.populationId(), by.keeperId(), collectionId);
    }

    private static void requireOpen(Dispute dispute) {
        if (dispute.state != DisputeState.OPEN) {
            throw new Refusal(
                    DISPUTE_ENDED,
                    "The dispute was %s at %s; if it is not so, report the animal anew."
                            .formatted(dispute.state.word(), dispute.endedAt));
        }
    }

    private void record(Standing by, Fact fact) {
        journal.record(by.populationId(), by.keeperId(), fact);
    }
}
