package org.demebook.federation;

import static org.demebook.problem.ProblemType.NOT_SHARED;

import io.quarkus.arc.All;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.demebook.federation.FederationFacts.AnimalNamedBetweenNodes;
import org.demebook.journal.Journal;
import org.demebook.peering.Node;
import org.demebook.problem.Refusal;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Charter;
import org.demebook.protocol.Entry;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Saying;
import org.demebook.protocol.Statement;
import org.demebook.wall.WholeRegister;

/** The shared populations of this node on its database. */
@ApplicationScoped
class SharedPopulations implements Federations {
    @Inject
    Journal journal;

    @Inject
    Node node;

    @Inject
    Parts parts;

    @Inject
    Transactions transactions;

    @Inject
    GroupCommit groupCommit;

    @Inject
    @All
    List<Consequence> consequences;

    @Override
    @Transactional
    public boolean isShared(UUID population) {
        return node.isFederated() && FederatedPopulation.of(population).isPresent();
    }

    @Override
    @Transactional
    public List<UUID> shared() {
        return node.isFederated()
                ? FederatedPopulation.inOrder().stream()
                        .map(row -> row.populationId)
                        .toList()
                : List.of();
    }

    @Override
    public String nodeId() {
        return node.identity().nodeId();
    }

    @Override
    public <T> T with(UUID population, Function<Participant, T> work) {
        return transactions.inOne(() -> {
            journal.open(population);
            var part = parts.of(population).orElseThrow(() -> notShared());
            var mine = transactions.key();
            if (!part.isHeldBy(mine)) {
                part.take(mine, true);
                transactions.atEnd(committed -> parts.leave(part, committed));
            } else if (!part.mayWrite()) {
                throw new IllegalStateException("a reading changes nothing");
            }
            try {
                return part.change(work, () -> consequences);
            } finally {
                if (part.isBroken()) {
                    transactions.doom();
                }
            }
        });
    }

    @Override
    public <T> T reading(UUID population, Function<Participant, T> work) {
        return transactions.reading(() -> {
            var part = parts.of(population).orElseThrow(() -> notShared());
            if (part.isHeldBy(transactions.key())) {
                return part.read(work);
            }
            part.take(transactions.key(), false);
            boolean done = false;
            try {
                var result = part.read(work);
                done = true;
                return result;
            } finally {
                part.leave(done);
            }
        });
    }

    @Override
    public List<Entry> write(UUID population, List<Saying> sayings) {
        return transactions.isOpen()
                ? with(population, part -> part.write(sayings))
                : groupCommit.write(population, sayings, all -> with(population, part -> part.write(all)));
    }

    @Override
    public Optional<String> nodeOfSeat(UUID population, String code) {
        return charter(population).flatMap(charter -> charter.seats().stream()
                .filter(seat -> seat.code().equals(code))
                .map(Charter.Seat::node)
                .findFirst());
    }

    @Override
    public Optional<String> codeOfNode(UUID population, String nodeId) {
        return charter(population).flatMap(charter -> charter.seat(nodeId)).map(Charter.Seat::code);
    }

    private Optional<Charter> charter(UUID population) {
        return isShared(population) ? reading(population, Participant::charter) : Optional.empty();
    }

    @Override
    @Transactional
    @WholeRegister
    public Optional<AnimalId> animalId(UUID population, UUID animal) {
        return FederatedAnimal.idOf(population, animal);
    }

    @Override
    @Transactional
    @WholeRegister
    public Map<UUID, AnimalId> animalIds(UUID population) {
        return FederatedAnimal.all(population);
    }

    @Override
    @Transactional
    @WholeRegister
    public Optional<UUID> localId(UUID population, AnimalId animalId) {
        return FederatedAnimal.called(population, animalId);
    }

    @Override
    @Transactional(TxType.MANDATORY)
    public AnimalId name(UUID population, UUID actor, UUID animal) {
        journal.open(population);
        return FederatedAnimal.idOf(population, animal).orElseGet(() -> {
            var id = new AnimalId(UUID.randomUUID(), nodeId());
            with(population, part -> part.write(List.of(Saying.toAll(new Statement.AnimalEntered(id)))));
            journal.record(population, actor, new AnimalNamedBetweenNodes(animal, id.toString()));
            return id;
        });
    }

    @Override
    @Transactional(TxType.MANDATORY)
    public void arrived(UUID population, UUID actor, UUID animal, AnimalId animalId) {
        journal.open(population);
        if (FederatedAnimal.idOf(population, animal).isEmpty()) {
            journal.record(population, actor, new AnimalNamedBetweenNodes(animal, animalId.toString()));
        }
    }

    private static Refusal notShared() {
        return new Refusal(
                NOT_SHARED,
                "This population is not shared with other nodes. An administrator can share it (POST …/federation).");
    }
}
