package org.demebook.crossing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.crossing.CrossingFacts.AnimalArrivedElsewhere;
import org.demebook.crossing.CrossingFacts.AnimalOfferedElsewhere;
import org.demebook.crossing.CrossingFacts.AnimalReleasedElsewhere;
import org.demebook.crossing.CrossingFacts.CrossingExpired;
import org.demebook.crossing.CrossingFacts.CrossingRefused;
import org.demebook.crossing.CrossingFacts.CrossingWithdrawn;
import org.demebook.federation.Federations;
import org.demebook.journal.Fact;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Leavers;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Saying;
import org.demebook.protocol.Statement.TellingsWithdrawn;
import org.demebook.protocol.Transfer;
import org.demebook.registry.Animals;
import org.demebook.transfer.Days;

/** What follows for the animal, and the keeper, that this node gives. */
@ApplicationScoped
class Giving {
    /** Of an offer from before a restore. */
    private static final long UNKNOWN = 0;

    @Inject
    Journal journal;

    @Inject
    Animals animals;

    @Inject
    Keepers keepers;

    @Inject
    Leavers leavers;

    @Inject
    Federations federations;

    @Inject
    Spoken spoken;

    @Inject
    Days days;

    void follow(UUID population, Transfer transfer, Participant participant) {
        if (spoken.isOffering()) {
            return; // whoever offers records it
        }
        var crossing = Optional.ofNullable(Crossing.of(population, transfer.id()))
                .or(() -> found(population, transfer, participant));
        // another node may give its own offer the same id
        crossing.filter(row -> row.given && row.node.equals(transfer.to())).ifPresent(row -> {
            follow(row, transfer);
            withdrawRecord(row, transfer, participant);
        });
    }

    private void follow(Crossing crossing, Transfer transfer) {
        switch (transfer.state()) {
            case OFFERED, ACCEPTED -> {}
            case RELEASED -> release(crossing);
            case TAKEN -> {
                release(crossing);
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

    /** What came to nothing is told no more: the other node erases what it was told of the animal, and says so. */
    private static void withdrawRecord(Crossing crossing, Transfer transfer, Participant participant) {
        var toNothing = transfer.state() == Transfer.State.WITHDRAWN || transfer.state() == Transfer.State.REJECTED;
        if (toNothing && !participant.fenced()) {
            withdrawRecord(crossing, participant);
        }
    }

    /** Has the other node erase what it was told with an offer, whatever became of that. */
    static void withdrawRecord(Crossing crossing, Participant participant) {
        if (crossing.toldSeq != null
                && crossing.toldSeq > UNKNOWN
                && participant.record(crossing.id).isPresent()) {
            participant.write(List.of(Saying.toAll(new TellingsWithdrawn(List.of(crossing.toldSeq)))));
        }
    }

    private void release(Crossing crossing) {
        if (crossing.state != CrossingState.ON_ITS_WAY && crossing.state != CrossingState.ARRIVED) {
            record(crossing, new AnimalReleasedElsewhere(crossing.id));
        }
    }

    private void arrive(Crossing crossing) {
        if (crossing.state != CrossingState.ARRIVED) {
            var holder = UUID.randomUUID(); // random: not even the time of its making is in it
            leavers.openUnnamed(crossing.populationId, crossing.keeperId, holder);
            record(crossing, new AnimalArrivedElsewhere(crossing.id, holder));
        }
    }

    private void end(Crossing crossing, Fact end) {
        if (crossing.state == CrossingState.OFFERED) {
            record(crossing, end);
        }
    }

    private void record(Crossing crossing, Fact fact) {
        journal.record(crossing.populationId, crossing.keeperId, fact);
    }

    /** An own offer that this register does not know: it was restored from a backup, and its journal came back from others. */
    private Optional<Crossing> found(UUID population, Transfer transfer, Participant participant) {
        var animalId = federations.localId(population, transfer.animal());
        var record = participant.record(transfer.id()).flatMap(HandedRecord::tryRead);
        if (animalId.isEmpty() || record.isEmpty()) {
            return Optional.empty();
        }
        var collection = animals.custody(population, animalId.get()).collectionId();
        if (collection == null) {
            return Optional.empty();
        }
        // any of those who act for it may have offered it
        return keepers.keepersOf(population, collection).stream()
                .sorted()
                .findFirst()
                .map(keeper -> {
                    journal.record(
                            population,
                            keeper,
                            new AnimalOfferedElsewhere(
                                    transfer.id(),
                                    animalId.get(),
                                    transfer.animal().toString(),
                                    transfer.to(),
                                    record.get().kind(),
                                    collection,
                                    record.get().addressee(),
                                    transfer.expiresAt(),
                                    record.get().handedOverOn(),
                                    record.get().note(),
                                    UNKNOWN));
                    return Crossing.of(population, transfer.id());
                });
    }
}
