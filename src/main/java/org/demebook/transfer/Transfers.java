package org.demebook.transfer;

import static org.demebook.problem.ProblemType.ALREADY_IN_TRANSFER;
import static org.demebook.problem.ProblemType.ANIMAL_DEAD;
import static org.demebook.problem.ProblemType.ANIMAL_MERGED;
import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NOT_ON_LOAN;
import static org.demebook.problem.ProblemType.NO_SUCH_COLLECTION;
import static org.demebook.problem.ProblemType.NO_SUCH_TRANSFER;
import static org.demebook.problem.ProblemType.ON_LOAN;
import static org.demebook.problem.ProblemType.TRANSFER_ENDED;
import static org.demebook.problem.ProblemType.TRANSFER_TO_YOURSELF;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.Words;
import org.demebook.problem.Refusal;
import org.demebook.registry.Animals;
import org.demebook.registry.AwayAnimals;
import org.demebook.registry.Breach;
import org.demebook.registry.Custody;
import org.demebook.registry.LeftFindings;
import org.demebook.rest.Page;
import org.demebook.transfer.TransferFacts.AnimalHandedOut;
import org.demebook.transfer.TransferFacts.ClaimCodeRenewed;
import org.demebook.transfer.TransferFacts.TransferAccepted;
import org.demebook.transfer.TransferFacts.TransferExpired;
import org.demebook.transfer.TransferFacts.TransferOffered;
import org.demebook.transfer.TransferFacts.TransferRefused;
import org.demebook.transfer.TransferFacts.TransferWithdrawn;
import org.jspecify.annotations.Nullable;

/**
 * The transfers between the keepers of this node.
 *
 * <p>The side that gives is whoever acts for the collection that the animal leaves; the side that receives is the one keeper
 * that it is addressed to. To anybody else there is no such transfer. An answer that is given again the same way is no
 * error; another answer after the end is refused with what happened.
 */
@ApplicationScoped
public class Transfers {
    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    LeftFindings leftFindings;

    @Inject
    Gravidity gravidity;

    @Inject
    Parties parties;

    @Inject
    TransferViews views;

    @Inject
    Days days;

    @Inject
    AwayAnimals awayAnimals;

    // ── the side that gives ──────────────────────────────────────────────────────────────────────────────────────────

    /** Offers an animal to a fellow member, or hands it out with a claim code. */
    @Transactional
    public Offered offer(Standing by, NewTransfer transfer) {
        journal.open(by.populationId());
        var animal = requireFree(by, transfer.animal());
        var breaches = new ArrayList<Breach>();
        var expiresAt =
                days.end(transfer.expiresOn(), transfer.handsOut() ? Days.CODE_STANDS : Days.OFFER_STANDS, breaches);
        days.checkHandedOver(transfer.handedOverOn(), animal, breaches);
        checkAddressee(transfer, breaches);
        gravidity.check(by, animal).ifPresent(breaches::add);
        Breach.refuse(breaches, transfer.leave());
        var to =
                transfer.to() == null ? null : keepers.member(by, transfer.to()).keeperId();
        requireItsOwnersWill(by, animal, transfer, to);

        var id = Journal.newId();
        if (to == null) {
            handOut(by, id, animal, transfer, expiresAt);
            leftFindings.record(by, LeftFindings.ANIMAL, animal.id(), breaches, transfer.leave());
            var code = ClaimCode.issue(by.populationId(), id, expiresAt);
            return new Offered(get(by, id), code);
        }
        offer(by, id, animal, transfer, to, expiresAt);
        leftFindings.record(by, LeftFindings.ANIMAL, animal.id(), breaches, transfer.leave());
        return new Offered(get(by, id), null);
    }

    /** The animal, alive, in the asker's hands, and in no other transfer. */
    private Custody requireFree(Standing by, String number) {
        var known = parties.known(by, number);
        parties.requireNotGivenAway(by, known);
        Transfer.openOf(by.populationId(), known.id()).ifPresent(open -> {
            if (open.due(days.now())) {
                journal.record(by.populationId(), open.offeredBy, new TransferExpired(open.id));
            } else if (parties.gives(by, open)) {
                throw new Refusal(
                        ALREADY_IN_TRANSFER,
                        "%s is %s in transfer %s; withdraw that one first."
                                .formatted(known.number(), open.state.word(), open.id));
            }
        });
        var animal = animals.inHand(by, number);
        requireNotMerged(animal);
        Disputes.requireUndisputed(animal);
        awayAnimals.requireFree(by.populationId(), animal.id());
        return animal;
    }

    static void requireNotMerged(Custody animal) {
        if (animal.merged()) {
            throw new Refusal(
                    ANIMAL_MERGED,
                    "%s was found to be an animal with another number; open it to see which, and transfer that one."
                            .formatted(animal.number()));
        }
    }

    private static void checkAddressee(NewTransfer transfer, List<Breach> breaches) {
        if (transfer.handsOut() == (transfer.to() != null)) {
            breaches.add(Breach.error(
                    INVALID_VALUES,
                    "to",
                    transfer.to(),
                    "Name the member who receives it (to), or ask for a claim code (withClaimCode): one of the two."));
        }
        if (transfer.handsOut() && !transfer.kind().changesOwner()) {
            breaches.add(Breach.error(
                    INVALID_VALUES,
                    "withClaimCode",
                    true,
                    "A claim code is for a sale, gift or exchange; a loan needs a member who answers for the animal."));
        }
    }

    private void requireItsOwnersWill(Standing by, Custody animal, NewTransfer transfer, @Nullable UUID to) {
        var owner = Objects.requireNonNull(animal.ownerCollectionId());
        var lent = !owner.equals(animal.collectionId());
        if (to != null && keepers.actsFor(by.populationId(), to, Objects.requireNonNull(animal.collectionId()))) {
            throw new Refusal(
                    TRANSFER_TO_YOURSELF,
                    "%s keeps %s already; name somebody else.".formatted(transfer.to(), animal.number()));
        }
        if (transfer.kind() != Kind.LOAN_RETURN) {
            if (lent) {
                throw new Refusal(
                        ON_LOAN,
                        "%s is on loan to you and goes back to its owner only (loan-return)."
                                .formatted(animal.number()));
            }
            return;
        }
        if (!lent) {
            throw new Refusal(
                    NOT_ON_LOAN, "%s is your own; there is nobody to return it to.".formatted(animal.number()));
        }
        if (to == null || !keepers.actsFor(by.populationId(), to, owner)) {
            throw new Refusal(
                    ON_LOAN,
                    "%s goes back to its owner, and %s is not a keeper of the collection that owns it."
                            .formatted(animal.number(), transfer.to()));
        }
    }

    private void offer(Standing by, UUID id, Custody animal, NewTransfer transfer, UUID to, Instant expiresAt) {
        journal.record(
                by.populationId(),
                by.keeperId(),
                new TransferOffered(
                        id,
                        animal.id(),
                        transfer.kind(),
                        Objects.requireNonNull(animal.collectionId()),
                        to,
                        expiresAt,
                        transfer.handedOverOn(),
                        Words.orNull(transfer.note())));
    }

    private void handOut(Standing by, UUID id, Custody animal, NewTransfer transfer, Instant expiresAt) {
        journal.record(
                by.populationId(),
                by.keeperId(),
                new AnimalHandedOut(
                        id,
                        animal.id(),
                        transfer.kind(),
                        Objects.requireNonNull(animal.collectionId()),
                        expiresAt,
                        transfer.handedOverOn(),
                        Words.orNull(transfer.note())));
    }

    /** Takes an offer back, or an animal that was handed out and not claimed. */
    @Transactional
    public TransferView withdraw(Standing by, UUID transferId, Ending ending) {
        var transfer = open(by, transferId);
        requireGiver(by, transfer);
        if (transfer.state != State.WITHDRAWN) {
            requireStanding(transfer);
            ClaimCode.deleteById(transferId);
            journal.record(
                    by.populationId(), by.keeperId(), new TransferWithdrawn(transferId, Words.orNull(ending.reason())));
        }
        return views.of(by, transfer);
    }

    /** A fresh claim code for an animal that was handed out; the one before is void. */
    @Transactional
    public Offered renewCode(Standing by, UUID transferId, Renewal renewal) {
        var transfer = open(by, transferId);
        requireGiver(by, transfer);
        requireStanding(transfer);
        if (transfer.state != State.HANDED_OUT) {
            throw new Refusal(NOT_ALLOWED, "It is offered to a member, who accepts it without a claim code.");
        }
        var breaches = new ArrayList<Breach>();
        var expiresAt = days.end(renewal.expiresOn(), Days.CODE_STANDS, breaches);
        Breach.refuse(breaches, null);
        journal.record(by.populationId(), by.keeperId(), new ClaimCodeRenewed(transferId, expiresAt));
        var code = ClaimCode.issue(by.populationId(), transferId, expiresAt);
        return new Offered(views.of(by, transfer), code);
    }

    // ── the side that receives ───────────────────────────────────────────────────────────────────────────────────────

    /** Takes an offer up: the animal moves at once. */
    @Transactional
    public TransferView accept(Standing by, UUID transferId, Acceptance acceptance) {
        var transfer = open(by, transferId);
        requireReceiver(by, transfer);
        var sameAnswer =
                acceptance.collection() == null || acceptance.collection().equals(transfer.toCollectionId);
        if (transfer.state == State.ACCEPTED && sameAnswer) {
            return views.of(by, transfer);
        }
        requireStanding(transfer);
        var animal = animals.custody(by.populationId(), transfer.animalId);
        if (animal.died() != null) {
            throw new Refusal(
                    ANIMAL_DEAD, "%s died on %s; refuse the offer.".formatted(animal.number(), animal.died()));
        }
        requireNotMerged(animal);
        Disputes.requireUndisputed(animal);
        var breaches = new ArrayList<Breach>();
        days.checkHandedOver(acceptance.handedOverOn(), animal, breaches);
        Breach.refuse(breaches, null);
        var into = destination(by, transfer, animal, acceptance.collection());
        journal.record(
                by.populationId(),
                by.keeperId(),
                new TransferAccepted(
                        transferId,
                        into,
                        acceptance.handedOverOn() == null ? transfer.handedOverOn : acceptance.handedOverOn()));
        return views.of(by, transfer);
    }

    private UUID destination(Standing by, Transfer transfer, Custody animal, @Nullable UUID wanted) {
        if (transfer.kind != Kind.LOAN_RETURN) {
            return keepers.collection(by, wanted).id();
        }
        var owner = Objects.requireNonNull(animal.ownerCollectionId());
        if (wanted != null && !wanted.equals(owner)) {
            throw new Refusal(
                    NO_SUCH_COLLECTION,
                    "%s comes back into the collection that lent it, %s; name that one or none."
                            .formatted(animal.number(), owner));
        }
        return owner;
    }

    @Transactional
    public TransferView refuse(Standing by, UUID transferId, Ending ending) {
        var transfer = open(by, transferId);
        requireReceiver(by, transfer);
        if (transfer.state != State.REFUSED) {
            requireStanding(transfer);
            journal.record(
                    by.populationId(), by.keeperId(), new TransferRefused(transferId, Words.orNull(ending.reason())));
        }
        return views.of(by, transfer);
    }

    // ── both ─────────────────────────────────────────────────────────────────────────────────────────────────────────

    /** One transfer; refuses with NO_SUCH_TRANSFER whoever is on neither side. */
    @Transactional
    public TransferView get(Standing by, UUID transferId) {
        return views.of(by, require(by, transferId));
    }

    /** The transfer that an animal is in now, for who is on one of its sides; empty alike when it is in none. */
    @Transactional
    public Optional<TransferView> openOf(Standing by, UUID animalId) {
        return Transfer.openOf(by.populationId(), animalId)
                .filter(open -> !open.due(days.now()))
                .filter(open -> parties.gives(by, open) || by.keeperId().equals(open.toKeeperId))
                .map(open -> views.of(by, open));
    }

    /**
     * The asker's transfers, given and received, the latest first.
     *
     * @param after cursor: id of the last one seen
     */
    @Transactional
    public Page<TransferView> page(Standing by, @Nullable State state, @Nullable String after, int limit) {
        return views.page(by, state, after, limit);
    }

    private Transfer open(Standing by, UUID transferId) {
        journal.open(by.populationId());
        return require(by, transferId);
    }

    private Transfer require(Standing by, UUID transferId) {
        var own = keepers.collectionIds(by); // asked for in either case: what is hidden costs what is absent does
        var transfer = Transfer.of(by.populationId(), transferId);
        if (transfer == null
                || !own.contains(transfer.fromCollectionId) && !by.keeperId().equals(transfer.toKeeperId)) {
            throw new Refusal(NO_SUCH_TRANSFER, "There is no transfer %s of yours.".formatted(transferId));
        }
        return transfer;
    }

    private void requireGiver(Standing by, Transfer transfer) {
        if (!parties.gives(by, transfer)) {
            throw new Refusal(NOT_ALLOWED, "Only the giver does this; you can refuse the offer.");
        }
    }

    private static void requireReceiver(Standing by, Transfer transfer) {
        if (!by.keeperId().equals(transfer.toKeeperId)) {
            throw new Refusal(NOT_ALLOWED, "Only the receiver does this; you can withdraw.");
        }
    }

    private void requireStanding(Transfer transfer) {
        if (transfer.due(days.now())) {
            throw new Refusal(
                    TRANSFER_ENDED, "The offer stood until %s; it takes a fresh one.".formatted(transfer.expiresAt));
        }
        if (!transfer.state.open()) {
            throw new Refusal(
                    TRANSFER_ENDED, "The transfer was %s at %s.".formatted(transfer.state.word(), transfer.endedAt));
        }
    }
}
