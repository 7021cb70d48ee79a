package org.demebook.federation;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Entry;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Saying;

/**
 * The populations that this node shares with others.
 *
 * <p>What is written through here stands in the transaction of the caller, where there is one, so that the facts of this node and
 * what others are told of them hold together or not at all.
 */
public interface Federations {
    /** Whether the population is shared with other nodes; false for one that is not here. */
    boolean isShared(UUID population);

    /** All that are, in the order of their ids. */
    List<UUID> shared();

    /**
     * This node's id.
     *
     * @throws org.demebook.problem.Refusal FEDERATION_OFF
     */
    String nodeId();

    /**
     * Works on this node's part in the population, in the caller's transaction or else in one of its own, with the population held
     * ({@link org.demebook.journal.Journal#open}). What took effect is given to every {@link Consequence} before it ends.
     *
     * @throws org.demebook.protocol.Refused what the work threw; then nothing of it is kept
     * @throws org.demebook.problem.Refusal NO_SUCH_POPULATION, NOT_SHARED
     */
    <T> T with(UUID population, Function<Participant, T> work);

    /** Reads this node's part without holding the population: what other transactions did so far. The work must change nothing. */
    <T> T reading(UUID population, Function<Participant, T> work);

    /**
     * Writes statements, all or none. Without a transaction of the caller's, several callers at once are written in one: under
     * load a journal takes some hundred statements a second this way, against a few dozen with {@link #with}.
     *
     * @throws org.demebook.protocol.Refused as {@link Participant#write}; what others wrote meanwhile is not touched
     */
    List<Entry> write(UUID population, List<Saying> sayings);

    /** The node with that code, by the charter; empty if there is no such seat. */
    Optional<String> nodeOfSeat(UUID population, String code);

    /** With which code a node issues studbook numbers, by the charter; empty if it has no seat. */
    Optional<String> codeOfNode(UUID population, String node);

    /** How an animal of this node's register is called between nodes; empty as long as it was not. */
    Optional<AnimalId> animalId(UUID population, UUID animal);

    /** The same of all animals of this node's register that have a name between nodes, by record. One query. */
    Map<UUID, AnimalId> animalIds(UUID population);

    /** The animal of this node's register that is called so between nodes; empty if there is none. */
    Optional<UUID> localId(UUID population, AnimalId animalId);

    /**
     * The same as {@link #animalId}; where it has none yet, the animal gets one, and every node is told that it was registered here.
     * For animals that this node registered and holds. In a transaction.
     *
     * @param actor who shares or offers it
     */
    AnimalId name(UUID population, UUID actor, UUID animal);

    /** An animal that came from another node stands in this node's register from now on. In a transaction. Does nothing twice. */
    void arrived(UUID population, UUID actor, UUID animal, AnimalId animalId);
}
