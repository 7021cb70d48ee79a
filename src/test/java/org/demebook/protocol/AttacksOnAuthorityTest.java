package org.demebook.protocol;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.demebook.protocol.Statement.Accepted;
import org.demebook.protocol.Statement.Adopted;
import org.demebook.protocol.Statement.AncestryTold;
import org.demebook.protocol.Statement.AnimalEntered;
import org.demebook.protocol.Statement.CharterStated;
import org.demebook.protocol.Statement.GoneStated;
import org.demebook.protocol.Statement.HoldingTold;
import org.demebook.protocol.Statement.Offered;
import org.demebook.protocol.Statement.Released;
import org.demebook.protocol.Statement.SameAnimalClaimed;
import org.demebook.protocol.Statement.SameAnimalConfirmed;
import org.demebook.protocol.Statement.SameAnimalReversed;
import org.demebook.protocol.Statement.Taken;
import org.demebook.protocol.Statement.TellingsWithdrawn;
import org.demebook.protocol.Statement.Withdrawn;
import org.junit.jupiter.api.Test;

/** A node that says what is not its to say: it stays without effect, is named, and nobody honest is accused. */
class AttacksOnAuthorityTest {
    private final Attacked world = new Attacked();
    private final Liar liar = world.liar;
    private final UUID transfer = TransferId.of(UUID.randomUUID(), liar.id());

    private Offered offer(AnimalId animal, String to) {
        return new Offered(transfer, animal, to, Liar.NOON.plusSeconds(3_600), Digests.of(Attacked.nothing()));
    }

    private AncestryTold ancestry(AnimalId animal) {
        return new AncestryTold(animal, Optional.empty(), Optional.empty(), List.of(), false, Attacked.nothing());
    }

    private void says(Alarm.Kind kind, Statement says) {
        says(kind, says, new Whereabouts.Held(world.harbour.id(), false));
    }

    private void says(Alarm.Kind kind, Statement says, Whereabouts hers) {
        liar.says(says);
        world.givesAll(world.harbour);
        world.assertDetected(world.harbour, kind);
        world.givesAll(world.upland);
        world.assertDetected(world.upland, kind);
        assertThat(world.agreed(world.hers)).isEqualTo(hers);
    }

    // ── animals of others ────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void an_animal_with_another_nodes_name_is_not_entered() {
        says(Alarm.Kind.FOREIGN_AUTHORITY, new AnimalEntered(world.hers));
    }

    @Test
    void an_animal_is_entered_once() {
        says(Alarm.Kind.REPLAYED, new AnimalEntered(world.his));
    }

    @Test
    void parents_are_told_by_the_node_that_registered_the_animal() {
        says(Alarm.Kind.FOREIGN_AUTHORITY, ancestry(world.hers));
        assertThat(world.harbour.participant.told().ancestry()).doesNotContainKey(world.hers);
    }

    @Test
    void parents_of_an_animal_that_nobody_entered_are_not_told() {
        says(Alarm.Kind.NOT_ITS_HOLDER, ancestry(new AnimalId(UUID.randomUUID(), liar.id())));
    }

    @Test
    void how_an_animal_is_told_by_the_node_that_holds_it() {
        says(Alarm.Kind.NOT_ITS_HOLDER, new HoldingTold(world.hers, "female", false, "x", Attacked.nothing()));
        assertThat(world.harbour.participant.told().holdings()).doesNotContainKey(world.hers);
    }

    @Test
    void the_charter_is_the_founders() {
        says(Alarm.Kind.FOREIGN_AUTHORITY, new CharterStated(new Charter("MC", Attacked.nothing(), List.of())));
        assertThat(world.harbour.participant.charter().orElseThrow().seats()).hasSize(3);
    }

    @Test
    void one_node_does_not_open_the_journal_of_another() {
        var own = liar.chain;
        liar.chain = world.upland.chain;
        var says = new Statement.JournalOpened(liar.chain, "Upland");
        liar.chain = own;
        var other = new Liar(world.population, liar.key, own);
        other.says(says);
        world.gives(world.harbour, other.page(0));
        assertThat(world.harbour.participant.alarms()).isNotEmpty();
        world.assertNobodyHonestIsAccused();
    }

    // ── hand-over ────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void an_animal_that_it_does_not_hold_is_not_offered() {
        says(Alarm.Kind.NOT_ITS_HOLDER, offer(world.hers, world.upland.id()));
    }

    /** Else it could stand in its place: whoever accepts names the transfer alone. */
    @Test
    void nothing_is_offered_under_the_name_of_anothers_transfer() {
        var hers = world.harbour.participant.offer(
                world.hers, world.upland.id(), Liar.NOON.plusSeconds(60), Attacked.nothing());
        world.settle();
        says(
                Alarm.Kind.FOREIGN_AUTHORITY,
                new Offered(hers, world.his, world.upland.id(), Liar.NOON, Digests.of(Attacked.nothing())),
                new Whereabouts.Held(world.harbour.id(), true));
        world.upland.participant.accept(hers);
        world.settle();
        assertThat(world.agreed(world.hers)).isEqualTo(new Whereabouts.Held(world.upland.id(), false));
    }

    @Test
    void an_animal_is_offered_to_one_at_a_time() {
        liar.says(offer(world.his, world.upland.id()));
        says(
                Alarm.Kind.NOT_ITS_HOLDER,
                new Offered(
                        TransferId.of(UUID.randomUUID(), liar.id()),
                        world.his,
                        world.harbour.id(),
                        Liar.NOON,
                        Digests.of(Attacked.nothing())));
    }

    @Test
    void an_animal_is_not_taken_without_a_release() {
        world.harbour.participant.offer(world.hers, liar.id(), Liar.NOON.plusSeconds(60), Attacked.nothing());
        var given = world.harbour.participant.transfers().keySet().iterator().next();
        var offered = carriedFrom(world.harbour, Offered.class);
        liar.says(new Accepted(given, offered));
        liar.says(new Taken(given, new Statement.Carried(liar.sign(new Released(given, liar.last()), 9), liar.chain)));
        world.givesAll(world.upland);
        world.assertDetected(world.upland, Alarm.Kind.FALSE_PROOF);
        assertThat(world.upland.participant.whereabouts(world.hers))
                .isInstanceOfSatisfying(
                        Whereabouts.Held.class, held -> assertThat(held.node()).isEqualTo(world.harbour.id()));
    }

    @Test
    void a_release_is_used_once() {
        var given =
                world.harbour.participant.offer(world.hers, liar.id(), Liar.NOON.plusSeconds(60), Attacked.nothing());
        liar.says(new Accepted(given, carriedFrom(world.harbour, Offered.class)));
        world.givesAll(world.harbour);
        var release = carriedFrom(world.harbour, Released.class);
        liar.says(new Taken(given, release));
        liar.says(new Offered(
                transfer, world.hers, world.upland.id(), Liar.NOON.plusSeconds(60), Digests.of(Attacked.nothing())));
        liar.says(new Taken(given, release));
        world.givesAll(world.harbour);
        world.assertDetected(world.harbour, Alarm.Kind.REPLAYED);
    }

    @Test
    void a_release_of_one_transfer_is_not_one_of_another() {
        var given =
                world.harbour.participant.offer(world.hers, liar.id(), Liar.NOON.plusSeconds(60), Attacked.nothing());
        liar.says(new Accepted(given, carriedFrom(world.harbour, Offered.class)));
        world.givesAll(world.harbour);
        liar.says(new Taken(transfer, carriedFrom(world.harbour, Released.class)));
        world.givesAll(world.harbour);
        world.assertDetected(world.harbour, Alarm.Kind.NOT_ITS_HOLDER);
    }

    @Test
    void an_offer_to_somebody_else_is_not_accepted() {
        var given = world.harbour.participant.offer(
                world.hers, world.upland.id(), Liar.NOON.plusSeconds(60), Attacked.nothing());
        liar.says(new Accepted(given, carriedFrom(world.harbour, Offered.class)));
        world.givesAll(world.harbour);
        world.assertDetected(world.harbour, Alarm.Kind.FALSE_PROOF);
        assertThat(world.harbour.participant.transfers().get(given).state()).isEqualTo(Transfer.State.OFFERED);
    }

    @Test
    void nothing_is_released_on_an_acceptance_that_the_receiver_did_not_sign() {
        liar.says(offer(world.his, world.upland.id()));
        var forged = new Statement.Carried(liar.sign(new Accepted(transfer, liar.last()), 3), world.upland.chain);
        says(Alarm.Kind.FALSE_PROOF, new Released(transfer, forged));
    }

    @Test
    void what_was_released_is_not_withdrawn() {
        liar.says(offer(world.his, world.upland.id()));
        world.givesAll(world.upland);
        world.upland.participant.accept(transfer);
        liar.says(new Released(transfer, carriedFrom(world.upland, Accepted.class)));
        liar.says(new Withdrawn(transfer));
        world.givesAll(world.upland);
        world.assertDetected(world.upland, Alarm.Kind.REPLAYED);
        world.givesAll(world.harbour);
        assertThat(world.agreed(world.his)).isEqualTo(new Whereabouts.Held(world.upland.id(), false));
    }

    @Test
    void what_was_released_is_not_sold_again() {
        what_was_released_is_not_withdrawn();
        liar.says(new Offered(
                TransferId.of(UUID.randomUUID(), liar.id()),
                world.his,
                world.harbour.id(),
                Liar.NOON.plusSeconds(60),
                Digests.of(Attacked.nothing())));
        world.givesAll(world.harbour);
        world.assertDetected(world.harbour, Alarm.Kind.NOT_ITS_HOLDER);
        assertThat(world.agreed(world.his)).isEqualTo(new Whereabouts.Held(world.upland.id(), false));
    }

    @Test
    void another_record_than_the_offer_names_is_not_believed() {
        liar.says(offer(world.his, world.upland.id()));
        liar.says(new Statement.RecordSent(transfer, Attacked.nothing().put("number", "MC-N-1-7")));
        world.givesAll(world.upland);
        world.assertDetected(world.upland, Alarm.Kind.FALSE_PROOF);
        assertThat(world.upland.participant.record(transfer)).isEmpty();
    }

    // ── animals of nodes that are gone ───────────────────────────────────────────────────────────────────────────────

    private Adopted adoption(List<Statement.Carried> words) {
        return new Adopted(
                world.hers,
                world.harbour.id(),
                Optional.empty(),
                carriedFrom(world.harbour, CharterStated.class),
                words.stream()
                        .sorted(Comparator.comparing(word -> word.keys().nodeId()))
                        .toList());
    }

    private GoneStated harbourIsGone(String heir) {
        return new GoneStated(world.harbour.id(), 3, heir);
    }

    @Test
    void a_living_node_is_not_robbed_by_one_word() {
        liar.says(harbourIsGone(liar.id()));
        says(Alarm.Kind.FALSE_PROOF, adoption(List.of(liar.last())));
    }

    @Test
    void nor_by_a_word_that_another_did_not_sign() {
        liar.says(harbourIsGone(liar.id()));
        var forged = Entry.sign(world.upland.id(), world.population, 2, Liar.NOON, harbourIsGone(liar.id()), liar.key);
        says(
                Alarm.Kind.FALSE_PROOF,
                adoption(List.of(liar.last(), new Statement.Carried(forged.signed(), world.upland.chain))));
    }

    @Test
    void nor_by_a_word_on_another_node() {
        liar.says(harbourIsGone(liar.id()));
        var mine = liar.last();
        liar.says(new GoneStated(world.upland.id(), 1, liar.id()));
        says(Alarm.Kind.FALSE_PROOF, adoption(List.of(mine, liar.last())));
    }

    @Test
    void who_is_not_the_heir_that_was_named_does_not_adopt() {
        world.upland.participant.giveUp(world.harbour.id(), world.upland.id());
        liar.says(harbourIsGone(liar.id()));
        says(Alarm.Kind.FALSE_PROOF, adoption(List.of(liar.last(), carriedFrom(world.upland, GoneStated.class))));
    }

    @Test
    void who_says_of_itself_that_it_is_gone_is_not_believed() {
        says(Alarm.Kind.FOREIGN_AUTHORITY, new GoneStated(liar.id(), 1, world.upland.id()));
    }

    /** Its own journal shows both words; whoever has it needs nobody's trust to say so. */
    @Test
    void two_heirs_of_one_node_are_proof_against_who_named_them() {
        liar.says(harbourIsGone(world.upland.id()));
        liar.says(harbourIsGone(liar.id()));
        world.givesAll(world.upland);
        world.assertProven(world.upland, Alarm.Kind.TWO_HEIRS);
        assertThat(world.upland.participant.heirs(world.harbour.id())).containsEntry(liar.id(), world.upland.id());
    }

    /** One word in its journal, another inside an adoption. */
    @Test
    void so_are_a_word_that_is_told_and_one_that_is_carried() {
        world.upland.participant.giveUp(world.harbour.id(), liar.id());
        liar.says(harbourIsGone(world.upland.id()));
        var carried = new Statement.Carried(liar.sign(harbourIsGone(liar.id()), 9), liar.chain);
        liar.says(adoption(List.of(carried, carriedFrom(world.upland, GoneStated.class))));
        world.givesAll(world.upland);
        world.assertProven(world.upland, Alarm.Kind.TWO_HEIRS);
    }

    @Test
    void one_heir_is_named_and_adopts_with_the_word_of_more_than_half() {
        world.upland.participant.giveUp(world.harbour.id(), world.upland.id());
        assertThatThrownBy(() -> world.upland.participant.heirTo(world.harbour.id()))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.reason()).isEqualTo(Refused.Reason.NOT_THE_HEIR));
        assertThatThrownBy(() -> world.upland.participant.giveUp(world.harbour.id(), liar.id()))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.reason()).isEqualTo(Refused.Reason.REPLAYED));
        liar.says(new GoneStated(world.harbour.id(), 4, world.upland.id()));
        world.givesAll(world.upland);
        assertThatThrownBy(() -> world.upland.participant.heirTo(world.harbour.id()))
                .hasMessageContaining("Another node has 4 entries");
        world.harbour.participant.write(
                List.of(Saying.toAll(new AnimalEntered(new AnimalId(UUID.randomUUID(), world.harbour.id())))));
        Attacked.sync(world.upland, world.harbour, world.harbour.id());
        var proof = world.upland.participant.heirTo(world.harbour.id());
        world.upland.participant.write(List.of(Saying.toAll(
                new Adopted(world.hers, world.harbour.id(), Optional.empty(), proof.charter(), proof.words()))));
        assertThat(world.upland.participant.whereabouts(world.hers))
                .isEqualTo(new Whereabouts.Held(world.upland.id(), false));
        assertThat(world.upland.participant.alarms()).isEmpty();
    }

    // ── twice registered, and withdrawn ──────────────────────────────────────────────────────────────────────────────

    @Test
    void nobody_claims_for_an_animal_of_others() {
        says(Alarm.Kind.FOREIGN_AUTHORITY, new SameAnimalClaimed(UUID.randomUUID(), world.hers, world.his));
    }

    @Test
    void nobody_confirms_its_own_claim() {
        var claim = UUID.randomUUID();
        liar.says(new SameAnimalClaimed(claim, world.his, world.hers));
        says(Alarm.Kind.FOREIGN_AUTHORITY, new SameAnimalConfirmed(claim, liar.last()));
        assertThat(world.harbour.participant.told().sameAs()).isEmpty();
    }

    @Test
    void nobody_confirms_what_was_claimed_for_an_animal_of_others() {
        var claim = UUID.randomUUID();
        var accomplice = new Liar(world.population).opened();
        accomplice.says(new SameAnimalClaimed(claim, world.hers, world.his));
        says(Alarm.Kind.FOREIGN_AUTHORITY, new SameAnimalConfirmed(claim, accomplice.last()));
        assertThat(world.harbour.participant.told().sameAs()).isEmpty();
        assertThat(world.upland.participant.told().sameAs()).isEmpty();
    }

    @Test
    void a_claim_with_the_id_of_another_changes_nothing_of_that() {
        var his = world.his;
        var claim = world.harbour.participant.claimSame(world.hers, his);
        liar.says(new SameAnimalClaimed(claim, his, world.hers));
        liar.says(new SameAnimalReversed(claim));
        world.givesAll(world.harbour);
        assertThat(world.harbour.participant.sameAnimalClaims())
                .filteredOn(one -> one.animal().equals(world.hers))
                .extracting(SameAnimalClaim::state)
                .containsExactly(SameAnimalClaim.State.CLAIMED);
        assertThat(world.harbour.participant.claimedSame()).containsEntry(world.hers, his);
    }

    @Test
    void what_every_node_may_read_is_not_erased_by_a_withdrawal() {
        liar.says(offer(world.his, world.upland.id()));
        liar.says(new TellingsWithdrawn(List.of(3L)));
        world.givesAll(world.upland);
        assertThat(world.upland
                        .participant
                        .entries(world.harbour.id(), liar.id(), 0, 10)
                        .items()
                        .get(2)
                        .entry())
                .isPresent();
        world.assertNobodyHonestIsAccused();
    }

    @Test
    void a_withdrawal_of_what_is_not_told_yet_has_no_effect() {
        says(Alarm.Kind.REPLAYED, new TellingsWithdrawn(List.of(99L)));
    }

    // ── forms ────────────────────────────────────────────────────────────────────────────────────────────────────────

    private void saysRaw(String type, ObjectNode says) {
        liar.saysRaw(type, says);
        world.givesAll(world.harbour);
        world.assertDetected(world.harbour, Alarm.Kind.MALFORMED);
        assertThat(world.harbour.participant.heads()).doesNotContainKey(liar.id());
    }

    @Test
    void a_statement_of_no_known_type_is_not_taken() {
        saysRaw("animal-given-away", Attacked.nothing());
    }

    @Test
    void a_member_that_nobody_knows_is_not_taken_least_of_all_an_address_to_call() {
        saysRaw(
                "animal-entered",
                Attacked.nothing()
                        .put("animal", new AnimalId(UUID.randomUUID(), liar.id()).toString())
                        .put("address", "https://127.0.0.1:1/"));
    }

    @Test
    void a_member_of_another_type_is_not_taken() {
        saysRaw("withdrawn", Attacked.nothing().put("transfer", 7));
    }

    @Test
    void a_share_of_more_than_one_is_not_taken() {
        var says = (ObjectNode) StatementForm.write(ancestry(world.his));
        var sires = says.putArray("sires");
        sires.addObject().put("sire", world.hers.toString()).put("share", 700_000);
        sires.addObject()
                .put("sire", new AnimalId(UUID.randomUUID(), liar.id()).toString())
                .put("share", 700_000);
        saysRaw("ancestry-told", says);
    }

    private Statement.Carried carriedFrom(Attacked.Honest node, Class<? extends Statement> type) {
        return node
                .participant
                .entries(
                        world.upland.id().equals(node.id()) ? world.harbour.id() : world.upland.id(), node.id(), 0, 100)
                .items()
                .stream()
                .flatMap(item -> item.entry().stream())
                .map(compact -> org.demebook.signing.Signed.parse(compact, Entry.MOST_CHARACTERS))
                .filter(signed -> type.isInstance(Entry.read(signed).says()))
                .reduce((earlier, later) -> later)
                .map(signed -> new Statement.Carried(signed, node.chain))
                .orElseThrow();
    }

    @Test
    void the_honest_nodes_are_named_in_the_charter() {
        assertThat(Set.of(world.harbour.id(), world.upland.id(), liar.id())).allSatisfy(node -> assertThat(
                        world.upland.participant.charter().orElseThrow().seats(node))
                .isTrue());
    }
}
