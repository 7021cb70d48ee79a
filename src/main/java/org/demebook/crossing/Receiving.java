package org.demebook.crossing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.demebook.crossing.CrossingFacts.AnimalCameIn;
import org.demebook.crossing.CrossingFacts.CrossingAccepted;
import org.demebook.crossing.CrossingFacts.CrossingExpired;
import org.demebook.crossing.CrossingFacts.CrossingRefused;
import org.demebook.crossing.CrossingFacts.CrossingWithdrawn;
import org.demebook.crossing.CrossingFacts.OfferCameIn;
import org.demebook.federation.Federations;
import org.demebook.journal.Fact;
import org.demebook.journal.Journal;
import org.demebook.journal.Testimony;
import org.demebook.keeper.Keepers;
import org.demebook.notation.Transponder;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Transfer;
import org.demebook.registry.AnimalRegistered;
import org.demebook.registry.Animals;
import org.demebook.registry.Arrivals;
import org.demebook.registry.IdentifierView;
import org.demebook.registry.Populations;
import org.demebook.registry.Sire;
import org.demebook.transfer.Days;

/**
 * What follows for the keeper, and the register, that another node gives an animal to.
 *
 * <p>What that node sent may be anything. An offer that cannot be read, that is addressed to nobody here, or whose studbook number is not
 * one of the node that registered the animal, has no consequence: it expires, and tells nobody why.
 */
@ApplicationScoped
class Receiving {
    @Inject
    Journal journal;

    @Inject
    Testimony testimony;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Arrivals arrivals;

    @Inject
    Records records;

    @Inject
    Populations populations;

    @Inject
    Federations federations;

    @Inject
    Days days;

    void follow(UUID population, Transfer transfer, Participant participant) {
        var record = participant.record(transfer.id()).flatMap(HandedRecord::tryRead);
        Optional.ofNullable(Crossing.of(population, transfer.id()))
                .or(() -> comeIn(population, transfer, record))
                // another node may give its own offer the same id
                .filter(crossing -> !crossing.given && crossing.node.equals(transfer.from()))
                .ifPresent(crossing -> {
                    follow(crossing, transfer, record);
                    takeOut(crossing, participant);
                });
    }

    private void follow(Crossing crossing, Transfer transfer, Optional<HandedRecord> record) {
        switch (transfer.state()) {
            case OFFERED -> {}
            case ACCEPTED, RELEASED -> accept(crossing, record);
            case TAKEN -> {
                accept(crossing, record);
                arrive(crossing);
            }
            case WITHDRAWN ->
                end(
                        crossing,
                        days.now().isBefore(crossing.expiresAt)
                                ? new CrossingWithdrawn(crossing.id, null)
                                : new CrossingExpired(crossing.id));
            case REJECTED -> end(crossing, new CrossingRefused(crossing.id));
        }
    }

    /** The giver's node told it and took it back: once nothing is to come of it any more, the words go here as well. */
    void takeOut(Crossing crossing, Participant participant) {
        if (!crossing.state.open()
                && crossing.record != null
                && crossing.recordSeq != null
                && participant.record(crossing.id).isEmpty()) {
            testimony.takeOutOf(crossing.populationId, crossing.recordSeq);
        }
    }

    private void end(Crossing crossing, Fact end) {
        if (crossing.state == CrossingState.OFFERED || crossing.state == CrossingState.ACCEPTED) {
            record(crossing, end);
        }
    }

    private void record(Crossing crossing, Fact fact) {
        journal.record(crossing.populationId, crossing.keeperId, fact);
    }

    // ── an offer comes in ────────────────────────────────────────────────────────────────────────────────────────────

    private Optional<Crossing> comeIn(UUID population, Transfer transfer, Optional<HandedRecord> told) {
        return told.filter(record -> isNumberOf(population, transfer.animal(), record))
                .flatMap(record -> keepers.memberNamed(population, record.addressee())
                        .map(addressee -> {
                            journal.record(
                                    population,
                                    addressee,
                                    new OfferCameIn(
                                            transfer.id(),
                                            transfer.animal().toString(),
                                            transfer.from(),
                                            record.kind(),
                                            addressee,
                                            transfer.offeredAt(),
                                            transfer.expiresAt()));
                            return Crossing.of(population, transfer.id());
                        }));
    }

    /** Numbers are the registering node's to give: nobody names an animal of somebody else's with one. */
    private boolean isNumberOf(UUID population, AnimalId animal, HandedRecord record) {
        var number = record.number();
        var known = federations.localId(population, animal);
        return record.kind().changesOwner()
                && (known.isPresent()
                        ? animals.custody(population, known.get()).number().equals(number.toString())
                        : number.populationCode().equals(populations.codeOf(population))
                                && !number.nodeCode().equals(journal.nodeCode())
                                && federations
                                        .codeOfNode(population, animal.node())
                                        .filter(number.nodeCode()::equals)
                                        .isPresent());
    }

    // ── it is accepted ───────────────────────────────────────────────────────────────────────────────────────────────

    /** Its keeper did so; what this register does not know of it was lost in a restore from a backup. */
    private void accept(Crossing crossing, Optional<HandedRecord> record) {
        if (crossing.state == CrossingState.OFFERED && record.isPresent()) {
            var into = records.collectionOf(crossing.populationId, crossing.keeperId);
            record(
                    crossing,
                    new CrossingAccepted(
                            crossing.id, into, HandedRecord.text(record.get().json())));
        }
    }

    // ── it arrives ───────────────────────────────────────────────────────────────────────────────────────────────────

    private void arrive(Crossing crossing) {
        if (crossing.state != CrossingState.ACCEPTED || crossing.record == null) {
            return;
        }
        var population = crossing.populationId;
        var federatedId = AnimalId.parse(crossing.federatedId);
        var record = HandedRecord.parse(crossing.record);
        var known = federations
                .localId(population, federatedId)
                .or(() -> arrivals.numbered(population, record.number().toString()));
        var into = Objects.requireNonNull(crossing.collectionId);
        var animalId = known.orElseGet(() -> register(crossing, federatedId, record, into));
        federations.arrived(population, crossing.keeperId, animalId, federatedId);
        record(crossing, new AnimalCameIn(crossing.id, animalId));
        if (known.isPresent()) {
            arrivals.complete(population, crossing.keeperId, animalId, record.sex(), borne(record), into);
        }
    }

    private UUID register(Crossing crossing, AnimalId federatedId, HandedRecord record, UUID into) {
        return records.register(
                crossing.populationId,
                crossing.keeperId,
                federatedId,
                id -> new AnimalRegistered(
                        id,
                        record.number(),
                        record.sex(),
                        record.born(),
                        null,
                        record.origin(),
                        record.sourceCode(),
                        null,
                        new Sire.Unknown(),
                        null,
                        record.malformed(),
                        into,
                        borne(record),
                        record.notes(),
                        null,
                        false,
                        record.locality()));
    }

    private static List<IdentifierView> borne(HandedRecord record) {
        var borne = new ArrayList<IdentifierView>();
        for (var code : record.transponders()) {
            borne.add(IdentifierView.of(Transponder.parse(code), code));
        }
        record.marks().forEach(mark -> borne.add(new IdentifierView("mark", mark.strip())));
        var distinct = new ArrayList<IdentifierView>();
        for (var identifier : borne) {
            if (distinct.stream()
                    .noneMatch(other -> other.kind().equals(identifier.kind())
                            && other.value().equals(identifier.value()))) {
                distinct.add(identifier);
            }
        }
        return distinct;
    }
}
