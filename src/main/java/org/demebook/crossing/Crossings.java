package org.demebook.crossing;

import static org.demebook.problem.ProblemType.ALREADY_IN_TRANSFER;
import static org.demebook.problem.ProblemType.ALREADY_RELEASED;
import static org.demebook.problem.ProblemType.ANIMAL_IN_DISPUTE;
import static org.demebook.problem.ProblemType.ANIMAL_MERGED;
import static org.demebook.problem.ProblemType.CROSSING_ENDED;
import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_SUCH_CROSSING;
import static org.demebook.problem.ProblemType.NO_SUCH_NODE;
import static org.demebook.problem.ProblemType.ON_LOAN;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.demebook.crossing.CrossingFacts.AnimalOfferedElsewhere;
import org.demebook.crossing.CrossingFacts.CrossingAccepted;
import org.demebook.crossing.CrossingFacts.CrossingRefused;
import org.demebook.crossing.CrossingFacts.CrossingWithdrawn;
import org.demebook.federation.Federations;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.Words;
import org.demebook.problem.Refusal;
import org.demebook.registry.Animals;
import org.demebook.registry.Breach;
import org.demebook.registry.Custody;
import org.demebook.registry.Elsewhere;
import org.demebook.registry.LeftFindings;
import org.demebook.rest.Page;
import org.demebook.transfer.Days;
import org.demebook.transfer.Ending;
import org.demebook.transfer.Gravidity;
import org.demebook.transfer.Transfers;
import org.jspecify.annotations.Nullable;

/**
 * The crossings of this node's keepers: animals that they give to, or receive from, a keeper on another node.
 *
 * <p>The side that gives is whoever acts for the collection that the animal leaves; the side that receives is the one keeper that it is
 * addressed to. To anybody else there is no such crossing. What a keeper does is written into the federated journal in the same
 * transaction; what the other node does is followed by {@link Follows} when it is heard of.
 */
@ApplicationScoped
public class Crossings {
    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Elsewhere elsewhere;

    @Inject
    Transfers transfers;

    @Inject
    LeftFindings leftFindings;

    @Inject
    Gravidity gravidity;

    @Inject
    Days days;

    @Inject
    Federations federations;

    @Inject
    Spoken spoken;

    @Inject
    RecordWriter records;

    @Inject
    CrossingViews views;

    // ── the side that gives ──────────────────────────────────────────────────────────────────────────────────────────

    /** Codes of the other nodes to which an animal of the population can be given; none where it is kept on this node alone. */
    @Transactional
    public List<String> nodes(Standing by) {
        if (!federations.isShared(by.populationId())) {
            return List.of();
        }
        var own = federations.nodeId();
        return federations
                .reading(by.populationId(), participant -> participant.charter())
                .map(charter -> charter.seats().stream()
                        .filter(seat -> !seat.node().equals(own))
                        .map(seat -> seat.code())
                        .sorted()
                        .toList())
                .orElse(List.of());
    }

    /** Offers an animal to a keeper on another node. */
    @Transactional
    public CrossingView offer(Standing by, NewCrossing offer) {
        journal.open(by.populationId());
        var animal = requireFree(by, offer.animal());
        var breaches = new ArrayList<Breach>();
        var expiresAt = days.end(offer.expiresOn(), Days.OFFER_STANDS, breaches);
        days.checkHandedOver(offer.handedOverOn(), animal, breaches);
        checkKind(offer, breaches);
        gravidity.check(by, animal).ifPresent(breaches::add);
        Breach.refuse(breaches, offer.leave());
        var code = offer.node().strip().toUpperCase(Locale.ROOT);
        var node = requireNode(by, code);
        var id = spoken.offer(by, animal.id(), node, expiresAt, federatedId -> records.write(
                        by, offer, animal.id(), federatedId, code)
                .json());
        journal.record(
                by.populationId(),
                by.keeperId(),
                new AnimalOfferedElsewhere(
                        id.transfer(),
                        animal.id(),
                        id.animal().toString(),
                        node,
                        offer.kind(),
                        Objects.requireNonNull(animal.collectionId()),
                        offer.to().strip(),
                        expiresAt,
                        offer.handedOverOn(),
                        Words.orNull(offer.note()),
                        id.toldSeq()));
        leftFindings.record(by, LeftFindings.ANIMAL, animal.id(), breaches, offer.leave());
        return get(by, id.transfer());
    }

    /** The animal, alive, in the asker's hands and their own, and on offer to nobody. */
    private Custody requireFree(Standing by, String number) {
        var animal = animals.custody(by, number);
        var collection = animal.collectionId();
        if (collection == null || keepers.actsFor(by.populationId(), by.keeperId(), collection)) {
            elsewhere.requireFree(by.populationId(), animal.id());
        }
        animals.inHand(by, number);
        if (animal.merged()) {
            throw new Refusal(
                    ANIMAL_MERGED,
                    "%s was found to be an animal with another number; open it to see which, and offer that one."
                            .formatted(animal.number()));
        }
        if (animal.disputeId() != null) {
            throw new Refusal(
                    ANIMAL_IN_DISPUTE,
                    "%s is reported in two places; it changes hands again when that is settled."
                            .formatted(animal.number()));
        }
        transfers.openOf(by, animal.id()).ifPresent(open -> {
            throw new Refusal(
                    ALREADY_IN_TRANSFER,
                    "%s is %s in transfer %s; withdraw that one first."
                            .formatted(animal.number(), open.state().word(), open.id()));
        });
        if (!Objects.equals(collection, animal.ownerCollectionId())) {
            throw new Refusal(
                    ON_LOAN,
                    "%s is on loan to you and goes back to its owner only (POST …/transfers, kind loan-return)."
                            .formatted(animal.number()));
        }
        return animal;
    }

    private static void checkKind(NewCrossing offer, List<Breach> breaches) {
        if (!offer.kind().changesOwner()) {
            breaches.add(
                    Breach.error(
                            INVALID_VALUES,
                            "kind",
                            offer.kind().word(),
                            "A loan stays on one node, where owner and borrower are both known. To a keeper on another node an animal is sold, given or exchanged; agree between you that it is offered back."));
        }
    }

    private String requireNode(Standing by, String code) {
        if (!federations.isShared(by.populationId())) {
            throw new Refusal(
                    NO_SUCH_NODE,
                    "%s is kept on this node alone. To share it with another node, ask the administrator."
                            .formatted(by.populationCode()));
        }
        var node = federations.nodeOfSeat(by.populationId(), code);
        if (node.isEmpty() || node.get().equals(federations.nodeId())) {
            throw new Refusal(
                    NO_SUCH_NODE,
                    node.isEmpty()
                            ? "No node with the code %s takes part in %s; these do: %s."
                                    .formatted(code, by.populationCode(), String.join(", ", nodes(by)))
                            : "%s is this node; offer the animal to a fellow member here (POST …/transfers)."
                                    .formatted(code));
        }
        return node.get();
    }

    /** Takes an offer back; refuses with ALREADY_RELEASED once the animal is on its way. */
    @Transactional
    public CrossingView withdraw(Standing by, UUID crossingId, Ending ending) {
        var crossing = open(by, crossingId);
        if (!crossing.given) {
            throw new Refusal(NOT_ALLOWED, "Only the giver does this; you can refuse the offer.");
        }
        if (crossing.state == CrossingState.ON_ITS_WAY || crossing.state == CrossingState.ARRIVED) {
            throw new Refusal(
                    ALREADY_RELEASED,
                    "It was released at %s and cannot be taken back; ask %s to offer it back to you."
                            .formatted(crossing.movedAt, crossing.addressee));
        }
        if (crossing.state != CrossingState.WITHDRAWN) {
            requireOpen(crossing);
            journal.record(
                    by.populationId(), by.keeperId(), new CrossingWithdrawn(crossingId, Words.orNull(ending.reason())));
            spoken.withdraw(by.populationId(), crossingId);
        }
        return views.of(by, crossing);
    }

    // ── the side that receives ───────────────────────────────────────────────────────────────────────────────────────

    /**
     * Takes an offer up: the animal comes into the collection once the giver's node has released it, which it does when it hears of
     * this.
     */
    @Transactional
    public CrossingView accept(Standing by, UUID crossingId, CrossingAcceptance acceptance) {
        var crossing = open(by, crossingId);
        requireReceiver(crossing);
        var sameAnswer =
                acceptance.collection() == null || acceptance.collection().equals(crossing.collectionId);
        if ((crossing.state == CrossingState.ACCEPTED || crossing.state == CrossingState.ARRIVED) && sameAnswer) {
            return views.of(by, crossing);
        }
        requireOpen(crossing);
        var into = keepers.collection(by, acceptance.collection()).id();
        // on what it rests; after it was accepted nobody can change it
        var record = records.told(by.populationId(), crossingId)
                .orElseThrow(() -> new Refusal(
                        CROSSING_ENDED, "What goes with the offer was withdrawn; ask the giver for a fresh one."));
        journal.record(
                by.populationId(),
                by.keeperId(),
                new CrossingAccepted(crossingId, into, HandedRecord.text(record.json())));
        spoken.accept(by.populationId(), crossingId);
        return views.of(by, crossing);
    }

    @Transactional
    public CrossingView refuse(Standing by, UUID crossingId) {
        var crossing = open(by, crossingId);
        requireReceiver(crossing);
        if (crossing.state != CrossingState.REFUSED) {
            requireOpen(crossing);
            journal.record(by.populationId(), by.keeperId(), new CrossingRefused(crossingId));
            spoken.reject(by.populationId(), crossingId);
        }
        return views.of(by, crossing);
    }

    private static void requireReceiver(Crossing crossing) {
        if (crossing.given) {
            throw new Refusal(NOT_ALLOWED, "Only the receiver does this; you can withdraw.");
        }
    }

    // ── both ─────────────────────────────────────────────────────────────────────────────────────────────────────────

    /** One crossing; refuses with NO_SUCH_CROSSING whoever is on neither side. */
    @Transactional
    public CrossingView get(Standing by, UUID crossingId) {
        return views.of(by, require(by, crossingId));
    }

    /** The crossing by which an animal is being given, or was, for who gives it; empty alike when there is none. */
    @Transactional
    public Optional<CrossingView> lastGiven(Standing by, UUID animalId) {
        var own = keepers.collectionIds(by);
        return Crossing.lastGiven(by.populationId(), animalId)
                .filter(crossing -> own.contains(crossing.collectionId))
                .map(crossing -> views.of(by, crossing));
    }

    /**
     * The asker's crossings, given and received, the latest first.
     *
     * @param after cursor: sequence number of the last one seen
     */
    @Transactional
    public Page<CrossingView> page(Standing by, @Nullable CrossingState state, @Nullable String after, int limit) {
        return views.page(by, state, after, limit);
    }

    private Crossing open(Standing by, UUID crossingId) {
        journal.open(by.populationId());
        return require(by, crossingId);
    }

    private Crossing require(Standing by, UUID crossingId) {
        var own = keepers.collectionIds(by); // asked for in either case: what is hidden costs what is absent does
        var crossing = Crossing.of(by.populationId(), crossingId);
        if (crossing == null
                || (crossing.given
                        ? !own.contains(crossing.collectionId)
                        : !by.keeperId().equals(crossing.keeperId))) {
            throw new Refusal(NO_SUCH_CROSSING, "There is no crossing %s of yours.".formatted(crossingId));
        }
        return crossing;
    }

    private static void requireOpen(Crossing crossing) {
        if (crossing.state != CrossingState.OFFERED) {
            throw new Refusal(
                    CROSSING_ENDED,
                    crossing.state == CrossingState.ACCEPTED
                            ? "You accepted it at %s; what follows is the giver's node to do."
                                    .formatted(crossing.movedAt)
                            : "The crossing came to its end at %s: %s."
                                    .formatted(crossing.endedAt, crossing.state.word()));
        }
    }
}
