package org.demebook.federation;

import static org.demebook.Backstage.ask;
import static org.demebook.Colony.WREN;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.arc.Arc;
import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.keeper.Asker;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Charter;
import org.demebook.protocol.FeedError;
import org.demebook.protocol.Follower;
import org.demebook.protocol.Membership;
import org.demebook.protocol.MemoryDisk;
import org.demebook.protocol.PageForm;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Saying;
import org.demebook.protocol.Statement;
import org.demebook.protocol.Surroundings;
import org.demebook.protocol.Transfer;
import org.demebook.signing.KeyChain;
import org.demebook.signing.SigningKey;

/**
 * Another node of a colony's population, in the memory of the test: a participant that runs the real protocol, without a network between
 * the two. What it says reaches the server under test, and the other way round, when {@link #exchange} is called, and not before.
 */
public final class Upland {
    /** Of the first one beside a colony. */
    public static final String CODE = "U";

    private static final List<String> CODES = List.of(CODE, "V", "W", "X");

    public final UUID population;
    public final Participant participant;
    private String seat = CODE;
    private final Federations here;
    private final String id;
    private Duration ahead = Duration.ZERO;

    private Upland(UUID population) {
        var key = SigningKey.generate();
        var keys = KeyChain.of(key, SigningKey.generate().verifyingKey());
        this.population = population;
        this.here = shared().federations();
        this.id = keys.nodeId();
        this.participant = new Participant(
                new Membership(population, here.nodeId(), () -> keys, () -> key),
                new MemoryDisk(),
                new World(),
                Follower.NOBODY);
    }

    private final class World implements Surroundings {
        private final SecureRandom random = new SecureRandom();

        @Override
        public Instant now() {
            return Instant.now().plus(ahead);
        }

        @Override
        public byte[] salt() {
            var salt = new byte[32];
            random.nextBytes(salt);
            return salt;
        }

        @Override
        public UUID newId() {
            return UUID.randomUUID();
        }
    }

    /** Shares the colony with a fresh node, which has heard of everything so far. */
    public static Upland besides(Colony colony) {
        var population =
                UUID.fromString(ask("select population_id from demebook.population where code = ?", colony.code)
                        .get(0));
        var upland = new Upland(population);
        var wren = UUID.fromString(
                ask("select id from demebook.keeper where name = ?", WREN).get(0));
        if (!upland.here.isShared(population)) {
            shared().share(new Asker(wren, WREN, false), population);
        }
        upland.takeSeat();
        upland.exchange();
        return upland;
    }

    private static SharedInTests shared() {
        return Arc.container().select(SharedInTests.class).get();
    }

    private void takeSeat() {
        here.with(population, part -> {
            var charter = part.charter().orElseThrow();
            var seats = new ArrayList<>(charter.seats());
            seat = CODES.stream()
                    .filter(code ->
                            seats.stream().noneMatch(taken -> taken.code().equals(code)))
                    .findFirst()
                    .orElseThrow();
            seats.add(new Charter.Seat(id, seat));
            seats.sort((one, other) -> one.node().compareTo(other.node()));
            return part.write(List.of(Saying.toAll(
                    new Statement.CharterStated(new Charter(charter.code(), charter.description(), seats)))));
        });
        fetch();
        // no other is ever heard of by this one
        participant.others().stream()
                .filter(other -> !other.equals(here.nodeId()))
                .forEach(other -> participant.setAside(other, true));
        var cursor = participant.cursor(id);
        try {
            here.with(population, part -> part.entries(id, id, cursor.after(), 10));
        } catch (FeedError none) {
            participant.refused(here.nodeId(), cursor, none.reason());
        }
        participant.open("Upland", Optional.empty());
    }

    public String id() {
        return id;
    }

    /** Both hear of everything that the other said, and do what follows, until neither has anything new. */
    public void exchange() {
        for (int i = 0; i < 4; i++) {
            fetch();
            participant.settle();
            give();
            settleHere();
        }
    }

    /** The server under test does what follows from what it heard. */
    public void settleHere() {
        here.with(population, part -> {
            part.settle();
            return true;
        });
    }

    /** This node hears of what the server under test said; not the other way round. */
    public void fetch() {
        var cursor = participant.cursor(here.nodeId());
        var page = here.with(population, part -> part.entries(id, here.nodeId(), cursor.after(), 1000));
        participant.take(here.nodeId(), cursor, PageForm.read(PageForm.write(page)));
    }

    /** The server under test hears of what this node said. */
    public void give() {
        here.with(population, part -> {
            var cursor = part.cursor(id);
            var page = participant.entries(here.nodeId(), id, cursor.after(), 1000);
            return part.take(id, cursor, PageForm.read(PageForm.write(page)));
        });
    }

    /** This node hears of what another one beside the server said. */
    public void hear(Upland other) {
        var cursor = participant.cursor(other.id);
        var page = other.participant.entries(id, other.id, cursor.after(), 1000);
        participant.take(other.id, cursor, PageForm.read(PageForm.write(page)));
    }

    /** Tells everybody of an animal that this node registered and holds: what its detail grants to be read or computed with. */
    public void tell(AnimalId animal, String sex, String born, ObjectNode ofItself, AnimalId dam) {
        var custodian = animal.id().toString();
        participant.write(List.of(
                Saying.toAll(new Statement.AncestryTold(
                        animal, Optional.of(born), Optional.ofNullable(dam), List.of(), false, ofItself)),
                Saying.toAll(new Statement.HoldingTold(
                        animal,
                        sex,
                        true,
                        custodian,
                        JsonNodeFactory.instance.objectNode().put("everybody", 1)))));
    }

    /** An animal that this node registered; not heard of yet. */
    public AnimalId animal() {
        var animal = new AnimalId(UUID.randomUUID(), id);
        participant.write(List.of(Saying.toAll(new Statement.AnimalEntered(animal))));
        return animal;
    }

    public UUID offer(AnimalId animal, ObjectNode record) {
        return offer(animal, record, Duration.ofDays(14));
    }

    public UUID offer(AnimalId animal, ObjectNode record, Duration stands) {
        return participant.offer(animal, here.nodeId(), Instant.now().plus(stands), record);
    }

    /** How many entries this node's journal has. */
    public long size() {
        return participant.heads().get(id);
    }

    /** What it told in that entry is to be erased everywhere. */
    public void withdraw(long entry) {
        participant.write(List.of(Saying.toAll(new Statement.TellingsWithdrawn(List.of(entry)))));
    }

    public Transfer transfer(UUID id) {
        return participant.transfers().get(id);
    }

    /** Where an animal is by the journals, as the server under test has them. */
    public org.demebook.protocol.Whereabouts whereabouts(AnimalId animal) {
        return here.reading(population, part -> part.whereabouts(animal));
    }

    /** How an animal of the colony is called between nodes. */
    public AnimalId called(String number) {
        return AnimalId.parse(ask(
                        "select f.federated_id from demebook.federated_animal f join demebook.animal a"
                                + " on a.population_id = f.population_id and a.id = f.animal_id where a.population_id = ? and a.number = ?",
                        population,
                        number)
                .get(0));
    }

    /** With which code it issues studbook numbers. */
    public String seat() {
        return seat;
    }
}
