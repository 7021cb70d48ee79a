package org.demebook.protocol;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.signing.KeyChain;
import org.demebook.signing.Signed;

/**
 * What a node says in its journal, each in the past tense. Animals are named by {@link AnimalId}, nodes by their id; nothing here
 * names a person.
 *
 * <p>Most of them every node of the population may read. Those that are {@link Restricted} are told to some nodes only; the others
 * get their leaf.
 */
public sealed interface Statement {
    /** What not every node may read, and what can be withdrawn and erased. */
    sealed interface Restricted extends Statement permits AncestryTold, HoldingTold, RecordSent {}

    /** The first entry of every journal: with which keys it is written. */
    record JournalOpened(KeyChain keys, String name) implements Statement {}

    /** What the population is and which nodes take part; by the founding node alone, the last one holds. */
    record CharterStated(Charter charter) implements Statement {}

    /** From the next entry on the last key of these is the one that signs. */
    record KeysChanged(KeyChain keys) implements Statement {}

    /** The journal's node registered this animal and holds it. */
    record AnimalEntered(AnimalId animal) implements Statement {}

    /**
     * @param to the node that may take it
     * @param expiresAt by the giver's clock, which alone decides
     * @param record SHA-256, base64url, of the canonical form of what {@link RecordSent} holds
     */
    record Offered(UUID transfer, AnimalId animal, String to, Instant expiresAt, String record) implements Statement {}

    /** The giver ended its offer: it was taken back, refused or had expired. */
    record Withdrawn(UUID transfer) implements Statement {}

    /** @param offer the giver's entry */
    record Accepted(UUID transfer, Carried offer) implements Statement {}

    /** @param offer the giver's entry */
    record Rejected(UUID transfer, Carried offer) implements Statement {}

    /**
     * The giver holds the animal no more.
     *
     * @param acceptance the receiver's entry, which holds the offer
     */
    record Released(UUID transfer, Carried acceptance) implements Statement {}

    /**
     * The receiver holds the animal.
     *
     * @param release the giver's entry, which holds the acceptance
     */
    record Taken(UUID transfer, Carried release) implements Statement {}

    /**
     * Another node is gone for good, as far as this one's administrator knows. A node says so of another once, so that no two heirs
     * have the word of more than half.
     *
     * @param size of how many entries of its journal this node knows: what it is later found to have said after the largest of
     *     these sizes is void for its animals
     * @param heir the node that may adopt its animals
     */
    record GoneStated(String gone, long size, String heir) implements Statement {}

    /**
     * An animal of a node that is gone for good is held here now.
     *
     * @param stint the transfer by which the gone node had come to hold it; empty where it had registered it
     * @param charter the founder's entry that says who takes part
     * @param words entries that state it and name this node as the heir: of more than half of the other nodes, in the order of their ids
     */
    record Adopted(AnimalId animal, String from, Optional<UUID> stint, Carried charter, List<Carried> words)
            implements Statement {}

    /**
     * Who the parents are, as far as the node that registered the animal may tell; the last one holds.
     *
     * @param born year of birth, or a span of two as {@code 2019/2021}; empty: not known
     * @param dam empty: unknown, or not told
     * @param sires empty: unknown, or not told; the shares of several add to 1 000 000
     * @param founder whether it was taken from the wild
     * @param detail what else was granted: number, name …; an empty object for a skeleton
     */
    record AncestryTold(
            AnimalId animal,
            Optional<String> born,
            Optional<AnimalId> dam,
            List<SireShare> sires,
            boolean founder,
            ObjectNode detail)
            implements Restricted {}

    /** @param share in millionths, 1 to 1 000 000 */
    record SireShare(AnimalId sire, int share) {}

    /**
     * How it is with an animal, from the node that holds it; the last one holds.
     *
     * @param sex {@code female}, {@code male} or {@code unknown}
     * @param custodian a pseudonym of its keeper in this population
     */
    record HoldingTold(AnimalId animal, String sex, boolean alive, String custodian, ObjectNode detail)
            implements Restricted {}

    /** What the receiver is handed with an offer: to that node alone. */
    record RecordSent(UUID transfer, ObjectNode record) implements Restricted {}

    /**
     * What these entries of this journal told is told no more: who holds a copy erases it and says so.
     *
     * @param entries ascending sequence numbers, at most 1 000
     */
    record TellingsWithdrawn(List<Long> entries) implements Statement {}

    /**
     * A receipt: everything that was withdrawn by this entry of that node's journal is erased here.
     *
     * @param withdrawal sequence number of its {@link TellingsWithdrawn}
     */
    record Purged(String node, long withdrawal) implements Statement {}

    /** The animal, which this node registered, is the same as one that another node registered. */
    record SameAnimalClaimed(UUID claim, AnimalId animal, AnimalId other) implements Statement {}

    /** The node that registered the other agrees: from here on the smaller id stands for both. */
    record SameAnimalConfirmed(UUID claim, Carried claimed) implements Statement {}

    /** One of the two takes it back. */
    record SameAnimalReversed(UUID claim) implements Statement {}

    /** An entry of another journal inside a statement, with the keys that show who signed it. */
    record Carried(Signed entry, KeyChain keys) {}
}
