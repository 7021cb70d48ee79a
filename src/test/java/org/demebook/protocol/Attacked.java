package org.demebook.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.security.SecureRandom;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.protocol.Statement.AnimalEntered;
import org.demebook.signing.KeyChain;
import org.demebook.signing.SigningKey;

/** Two honest nodes, Harbour that founded the population and Upland, and a liar among them. */
final class Attacked {
    static final class Honest {
        final SigningKey key = SigningKey.generate();
        final KeyChain chain = KeyChain.of(key, SigningKey.generate().verifyingKey());
        final Participant participant;

        Honest(UUID population, String founder) {
            var random = new SecureRandom();
            var around = new Surroundings() {
                @Override
                public Instant now() {
                    return Liar.NOON;
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
            };
            participant = new Participant(
                    new Membership(population, founder.isEmpty() ? id() : founder, () -> chain, () -> key),
                    new MemoryDisk(),
                    around,
                    Follower.NOBODY);
        }

        String id() {
            return chain.nodeId();
        }
    }

    final UUID population = UUID.randomUUID();
    final Honest harbour = new Honest(population, "");
    final Honest upland = new Honest(population, harbour.id());
    final Liar liar = new Liar(population);
    final AnimalId hers = new AnimalId(UUID.randomUUID(), harbour.id());
    final AnimalId his = new AnimalId(UUID.randomUUID(), liar.id());

    Attacked() {
        var seats = new ArrayList<>(List.of(
                new Charter.Seat(harbour.id(), "H"),
                new Charter.Seat(upland.id(), "U"),
                new Charter.Seat(liar.id(), "N")));
        seats.sort(Comparator.comparing(Charter.Seat::node));
        liar.opened().says(new AnimalEntered(his));
        harbour.participant.open("Harbour", Optional.of(new Charter("MC", nothing(), seats)));
        sync(upland, harbour, harbour.id());
        clear(upland);
        assertThat(harbour.participant.fenced()).isFalse();
        assertThat(upland.participant.fenced()).isFalse();
        upland.participant.open("Upland", Optional.empty());
        harbour.participant.write(List.of(Saying.toAll(new AnimalEntered(hers))));
        settle();
    }

    static ObjectNode nothing() {
        return JsonNodeFactory.instance.objectNode();
    }

    private void clear(Honest node) {
        for (var other : List.copyOf(node.participant.awaited())) {
            node.participant.refused(other, node.participant.cursor(node.id()), FeedError.Reason.NO_SUCH_JOURNAL);
        }
    }

    /** The honest ones hear everything of each other. */
    void settle() {
        for (int round = 0; round < 3; round++) {
            sync(upland, harbour, harbour.id());
            sync(harbour, upland, upland.id());
        }
    }

    static Intake sync(Honest to, Honest from, String journal) {
        var cursor = to.participant.cursor(journal);
        try {
            var page = PageForm.read(PageForm.write(from.participant.entries(to.id(), journal, cursor.after(), 100)));
            var intake = to.participant.take(from.id(), cursor, page);
            to.participant.settle();
            return intake;
        } catch (FeedError e) {
            to.participant.refused(from.id(), cursor, e.reason());
            return Intake.of(Intake.Outcome.REFUSED);
        }
    }

    /** What comes of a page that the liar gives of its own journal. */
    Intake gives(Honest to, FeedPage page) {
        return gives(to, liar.id(), page);
    }

    Intake gives(Honest to, String from, FeedPage page) {
        return gives(to, from, page, page.node());
    }

    Intake gives(Honest to, String from, FeedPage page, String asked) {
        var intake = to.participant.take(from, to.participant.cursor(asked), PageForm.read(PageForm.write(page)));
        to.participant.settle();
        return intake;
    }

    /** The liar's whole journal as it stands, honestly given. */
    Intake givesAll(Honest to) {
        return gives(to, liar.page(to.participant.cursor(liar.id()).after()));
    }

    /** It is detected, named, and laid at nobody's door but the liar's. */
    void assertDetected(Honest by, Alarm.Kind kind) {
        assertThat(by.participant.alarms()).as("alarms").anySatisfy(alarm -> assertThat(alarm.kind())
                .isEqualTo(kind));
        assertNobodyHonestIsAccused();
    }

    void assertProven(Honest by, Alarm.Kind kind) {
        assertDetected(by, kind);
        assertThat(by.participant.alarms())
                .filteredOn(alarm -> alarm.kind() == kind)
                .allSatisfy(alarm -> assertThat(alarm.isProven()).isTrue())
                .allSatisfy(
                        alarm -> assertThat(Evidence.holds(alarm, population)).isTrue());
    }

    void assertNobodyHonestIsAccused() {
        for (var node : List.of(harbour, upland)) {
            assertThat(node.participant.alarms())
                    .allSatisfy(alarm -> assertThat(alarm.accused()).isEqualTo(liar.id()));
        }
    }

    /** Where the animal is, told alike by both honest nodes after they have heard each other. */
    Whereabouts agreed(AnimalId animal) {
        settle();
        assertThat(upland.participant.whereabouts(animal)).isEqualTo(harbour.participant.whereabouts(animal));
        return harbour.participant.whereabouts(animal);
    }
}
