package org.demebook.protocol;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.demebook.merkle.Checkpoint;
import org.demebook.merkle.MerkleTree;
import org.demebook.merkle.SignedCheckpoint;
import org.demebook.protocol.Intake.Outcome;
import org.demebook.protocol.Statement.AnimalEntered;
import org.demebook.protocol.Statement.KeysChanged;
import org.demebook.signing.KeyChain;
import org.demebook.signing.Signed;
import org.demebook.signing.SigningKey;
import org.junit.jupiter.api.Test;

/** A node that tells different stories, or none, of what it said: each is detected and named, and nobody honest is accused. */
class AttacksOnHistoryTest {
    private final Attacked world = new Attacked();
    private final Liar liar = world.liar;

    private AnimalId another() {
        return new AnimalId(UUID.randomUUID(), liar.id());
    }

    private static FeedPage.NodeHead shown(Liar of) {
        return new FeedPage.NodeHead(of.id(), of.chain, of.head());
    }

    // ── two stories ──────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void two_heads_of_one_size_told_to_two_nodes_come_to_light_when_these_talk() {
        var other = liar.forkedAfter(2).says(new AnimalEntered(another()));
        liar.says(new AnimalEntered(another()));
        world.givesAll(world.harbour);
        world.gives(world.upland, other.page(0));
        world.settle();
        world.assertProven(world.harbour, Alarm.Kind.EQUIVOCATION);
        world.assertProven(world.upland, Alarm.Kind.EQUIVOCATION);
        assertThat(world.givesAll(world.harbour).outcome()).isEqualTo(Outcome.REFUSED);
    }

    @Test
    void two_heads_of_different_size_do_too() {
        var other = liar.forkedAfter(2).says(new AnimalEntered(another())).says(new AnimalEntered(another()));
        liar.says(new AnimalEntered(another()));
        world.givesAll(world.harbour);
        world.gives(world.upland, other.page(0));
        world.settle();
        world.assertProven(world.upland, Alarm.Kind.EQUIVOCATION);
    }

    @Test
    void a_journal_that_goes_on_from_another_past_is_proven_to_have_two() {
        liar.says(new AnimalEntered(another()));
        world.givesAll(world.harbour);
        var other = liar.forkedAfter(2).says(new AnimalEntered(another())).says(new AnimalEntered(another()));
        assertThat(world.gives(world.harbour, other.page(3)).outcome()).isEqualTo(Outcome.REFUSED);
        world.assertProven(world.harbour, Alarm.Kind.EQUIVOCATION);
    }

    @Test
    void a_journal_that_goes_on_without_showing_from_what_is_not_taken() {
        world.givesAll(world.harbour);
        var other = liar.forkedAfter(1).says(new AnimalEntered(another())).says(new AnimalEntered(another()));
        var page = other.page(2);
        var garbage = new FeedPage(
                page.node(),
                page.after(),
                page.keys(),
                page.head(),
                page.items(),
                List.of(new byte[32], new byte[32]),
                page.fromEnd(),
                page.heads(),
                page.highest(),
                page.alarms());
        assertThat(world.gives(world.harbour, garbage).outcome()).isEqualTo(Outcome.REFUSED);
        world.assertDetected(world.harbour, Alarm.Kind.INCONSISTENT_HEAD);
    }

    @Test
    void a_second_head_shown_by_somebody_else_is_enough() {
        var other = liar.forkedAfter(1).says(new AnimalEntered(another()));
        world.givesAll(world.harbour);
        world.gives(world.harbour, liar.page(2, 2, liar.head(), List.of(shown(other)), List.of()));
        world.assertProven(world.harbour, Alarm.Kind.EQUIVOCATION);
    }

    @Test
    void a_head_beyond_the_copy_is_remembered_until_it_can_be_held_against_it() {
        var other = liar.forkedAfter(2).says(new AnimalEntered(another()));
        world.gives(world.harbour, liar.page(0, 2, liar.head(), List.of(shown(other)), List.of()));
        world.assertNobodyHonestIsAccused();
        liar.says(new AnimalEntered(another()));
        world.givesAll(world.harbour);
        world.assertProven(world.harbour, Alarm.Kind.EQUIVOCATION);
    }

    @Test
    void two_entries_with_one_number_are_found_by_the_one_that_a_taking_carries() {
        var offer = liar.forkedAfter(2)
                .says(new Statement.Offered(
                        TransferId.of(UUID.randomUUID(), liar.id()),
                        world.his,
                        world.upland.id(),
                        Liar.NOON.plusSeconds(60),
                        Digests.of(Attacked.nothing())));
        world.gives(world.upland, offer.page(0));
        world.upland.participant.accept(
                ((Statement.Offered) Entry.read(offer.last().entry()).says()).transfer());
        world.settle();
        liar.says(new AnimalEntered(another()));
        world.givesAll(world.harbour);
        world.assertProven(world.harbour, Alarm.Kind.FORKED_ENTRY);
    }

    @Test
    void a_proof_is_passed_on_and_checked_by_whoever_hears_it() {
        var other = liar.forkedAfter(1).says(new AnimalEntered(another()));
        world.givesAll(world.harbour);
        world.gives(world.harbour, liar.page(2, 2, liar.head(), List.of(shown(other)), List.of()));
        world.settle();
        world.assertProven(world.upland, Alarm.Kind.EQUIVOCATION);
    }

    @Test
    void an_invented_proof_against_an_honest_node_falls_back_on_its_inventor() {
        var head = SignedCheckpoint.sign(
                new Checkpoint(Evidence.origin(world.population, world.upland.id()), 1, new byte[32]),
                world.upland.id(),
                liar.key);
        var evidence = Evidence.equivocation(world.upland.chain, head, head, List.of());
        var alarm = new Alarm(
                "x", Alarm.Kind.EQUIVOCATION, world.upland.id(), Optional.of(evidence), "It lies.", Liar.NOON);
        world.gives(world.harbour, liar.page(0, 2, liar.head(), List.of(), List.of(alarm)));
        world.assertDetected(world.harbour, Alarm.Kind.FALSE_PROOF);
    }

    @Test
    void a_head_of_an_honest_node_that_it_did_not_sign_falls_back_on_who_shows_it() {
        var head = SignedCheckpoint.sign(
                new Checkpoint(Evidence.origin(world.population, world.upland.id()), 9, new byte[32]),
                world.upland.id(),
                liar.key);
        var shown = new FeedPage.NodeHead(world.upland.id(), world.upland.chain, head);
        world.gives(world.harbour, liar.page(0, 2, liar.head(), List.of(shown), List.of()));
        world.assertDetected(world.harbour, Alarm.Kind.FORGED_SIGNATURE);
    }

    @Test
    void an_invented_head_of_the_node_itself_does_not_stop_it() {
        var head = SignedCheckpoint.sign(
                new Checkpoint(Evidence.origin(world.population, world.harbour.id()), 99, new byte[32]),
                world.harbour.id(),
                liar.key);
        var shown = new FeedPage.NodeHead(world.harbour.id(), world.harbour.chain, head);
        world.gives(world.harbour, liar.page(0, 2, liar.head(), List.of(shown), List.of()));
        assertThat(world.harbour.participant.fenced()).isFalse();
        world.assertDetected(world.harbour, Alarm.Kind.FORGED_SIGNATURE);
    }

    @Test
    void a_cursor_from_the_future_does_not_stop_it_either() {
        assertThatThrownBy(() -> world.harbour.participant.entries(liar.id(), world.harbour.id(), 1_000, 10))
                .isInstanceOf(FeedError.class)
                .hasMessage("cursor-from-the-future");
        assertThat(world.harbour.participant.fenced()).isFalse();
    }

    // ── less than there is ───────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_shorter_journal_than_before_is_named() {
        liar.says(new AnimalEntered(another()));
        world.givesAll(world.harbour);
        world.gives(world.harbour, liar.page(3, 2, liar.head(2), List.of(), List.of()));
        world.assertDetected(world.harbour, Alarm.Kind.ROLLED_BACK);
    }

    @Test
    void entries_that_a_head_promises_are_missed() {
        var page = Liar.with(liar.page(0), List.of());
        assertThat(world.gives(world.harbour, page).outcome()).isEqualTo(Outcome.REFUSED);
        world.assertDetected(world.harbour, Alarm.Kind.WITHHELD);
    }

    @Test
    void a_page_of_the_past_has_no_effect() {
        var page = liar.page(0);
        var asked = world.harbour.participant.cursor(liar.id());
        world.harbour.participant.take(liar.id(), asked, page);
        assertThat(world.harbour.participant.take(liar.id(), asked, page).outcome())
                .isEqualTo(Outcome.STALE);
        assertThat(world.gives(world.harbour, page).outcome()).isEqualTo(Outcome.REFUSED);
        world.assertDetected(world.harbour, Alarm.Kind.BROKEN_SEQUENCE);
        assertThat(world.harbour.participant.heads()).containsEntry(liar.id(), 2L);
    }

    @Test
    void entries_out_of_order_are_not_taken() {
        var swapped = new ArrayList<>(liar.page(0).items());
        Collections.swap(swapped, 0, 1);
        world.gives(world.harbour, Liar.with(liar.page(0), swapped));
        world.assertDetected(world.harbour, Alarm.Kind.BROKEN_SEQUENCE);
        assertThat(world.harbour.participant.heads()).doesNotContainKey(liar.id());
    }

    @Test
    void an_entry_left_out_is_missed() {
        liar.says(new AnimalEntered(another()));
        var items = new ArrayList<>(liar.page(0).items());
        items.remove(1);
        world.gives(world.harbour, Liar.with(liar.page(0), items));
        world.assertDetected(world.harbour, Alarm.Kind.BROKEN_SEQUENCE);
    }

    @Test
    void an_entry_given_twice_is_one_too_many() {
        liar.append(liar.compacts.get(1));
        world.givesAll(world.harbour);
        world.assertDetected(world.harbour, Alarm.Kind.BROKEN_SEQUENCE);
    }

    @Test
    void more_entries_than_the_head_has_are_too_many() {
        liar.says(new AnimalEntered(another()));
        world.gives(world.harbour, Liar.with(liar.page(0), liar.head(2)));
        world.assertDetected(world.harbour, Alarm.Kind.BROKEN_SEQUENCE);
    }

    @Test
    void an_entry_of_another_population_does_not_count_here() {
        var elsewhere = new Liar(UUID.randomUUID(), liar.key, liar.chain);
        liar.append(elsewhere
                .sign(new AnimalEntered(another()), liar.compacts.size() + 1L)
                .compact());
        world.givesAll(world.harbour);
        world.assertDetected(world.harbour, Alarm.Kind.BROKEN_SEQUENCE);
    }

    // ── signatures and keys ──────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_forged_signature_is_not_taken_though_its_node_stands_for_it() {
        var forger = new Liar(world.population);
        var good = liar.sign(new AnimalEntered(another()), 3).compact();
        var forged = forger.key.sign(good.getBytes(StandardCharsets.US_ASCII));
        liar.append(good.substring(0, good.lastIndexOf('.') + 1)
                + java.util.Base64.getUrlEncoder().withoutPadding().encodeToString(forged));
        world.givesAll(world.harbour);
        world.assertDetected(world.harbour, Alarm.Kind.FORGED_SIGNATURE);
    }

    @Test
    void an_entry_by_a_foreign_key_is_not_taken() {
        var own = liar.key;
        liar.key = SigningKey.generate();
        var entry = liar.sign(new AnimalEntered(another()), 3).compact();
        liar.key = own;
        liar.append(entry);
        world.givesAll(world.harbour);
        world.assertDetected(world.harbour, Alarm.Kind.WRONG_KEY);
    }

    @Test
    void a_key_that_was_replaced_signs_no_more() {
        var old = liar.key;
        var next = SigningKey.generate();
        liar.chain = liar.chain.rotated(old, next, liar.recovery.verifyingKey());
        liar.key = next;
        liar.says(new KeysChanged(liar.chain));
        liar.key = old;
        var late = liar.sign(new AnimalEntered(another()), 4).compact();
        liar.key = next;
        liar.append(late);
        world.givesAll(world.harbour);
        world.assertDetected(world.harbour, Alarm.Kind.WRONG_KEY);
    }

    @Test
    void two_chains_of_keys_that_part_are_shown_by_themselves() {
        world.givesAll(world.harbour);
        var one = liar.chain.rotated(liar.key, SigningKey.generate(), liar.recovery.verifyingKey());
        var other = liar.chain.rotated(liar.key, SigningKey.generate(), liar.recovery.verifyingKey());
        liar.says(new AnimalEntered(another()));
        world.gives(world.harbour, Liar.with(liar.page(2), one));
        liar.says(new AnimalEntered(another()));
        world.gives(world.harbour, Liar.with(liar.page(3), other));
        world.assertProven(world.harbour, Alarm.Kind.FORKED_KEYS);
    }

    @Test
    void a_head_by_somebody_else_is_not_believed() {
        var stranger = SignedCheckpoint.sign(liar.head().checkpoint(), liar.id(), SigningKey.generate());
        world.gives(world.harbour, Liar.with(liar.page(0), stranger));
        world.assertDetected(world.harbour, Alarm.Kind.FORGED_SIGNATURE);
    }

    @Test
    void keys_of_another_node_are_not_believed() {
        var key = SigningKey.generate();
        world.gives(
                world.harbour,
                Liar.with(liar.page(0), KeyChain.of(key, SigningKey.generate().verifyingKey())));
        world.assertDetected(world.harbour, Alarm.Kind.WRONG_KEY);
    }

    @Test
    void a_journal_that_does_not_begin_with_its_opening_is_none() {
        var other = new Liar(world.population, liar.key, liar.chain);
        other.says(new AnimalEntered(world.his));
        world.gives(world.harbour, other.page(0));
        world.assertDetected(world.harbour, Alarm.Kind.BROKEN_SEQUENCE);
    }

    @Test
    void a_cosignature_that_nobody_gave_counts_for_nothing() {
        liar.says(new AnimalEntered(another()));
        var head = liar.head().cosigned(world.upland.id(), Liar.NOON, liar.key);
        world.gives(world.harbour, Liar.with(liar.page(0), head));
        world.settle();
        assertThat(world.harbour.participant.witnesses().get(liar.id())).doesNotContainKey(world.upland.id());
    }

    /** An entry of the harbour that the upland does not have yet. */
    private FeedPage newsOfHarbour() {
        world.harbour.participant.write(
                List.of(Saying.toAll(new AnimalEntered(new AnimalId(UUID.randomUUID(), world.harbour.id())))));
        return world.harbour.participant.entries(
                world.upland.id(),
                world.harbour.id(),
                world.upland.participant.cursor(world.harbour.id()).after(),
                10);
    }

    // ── what others passed on ────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void who_changes_the_entries_of_an_honest_node_on_the_way_accuses_itself() {
        var page = newsOfHarbour();
        var items = new ArrayList<>(page.items());
        var kept = world.harbour
                .participant
                .entries(world.upland.id(), world.harbour.id(), 0, 1)
                .items()
                .get(0);
        items.set(0, new FeedPage.Item(kept.entry(), items.get(0).salt(), Optional.empty()));
        world.gives(world.upland, liar.id(), Liar.with(page, items));
        world.assertDetected(world.upland, Alarm.Kind.BROKEN_SEQUENCE);
    }

    @Test
    void who_gives_another_salt_on_the_way_accuses_itself() {
        var page = newsOfHarbour();
        var items = new ArrayList<>(page.items());
        items.set(
                0,
                new FeedPage.Item(
                        items.get(0).entry(), Optional.of(new byte[MerkleTree.SALT_BYTES]), Optional.empty()));
        world.gives(world.upland, liar.id(), Liar.with(page, items));
        world.assertDetected(world.upland, Alarm.Kind.INCONSISTENT_HEAD);
    }

    @Test
    void who_gives_a_digest_where_the_entry_is_owed_accuses_itself() {
        var page = newsOfHarbour();
        var item = page.items().get(0);
        var digest = MerkleTree.digestOf(
                item.salt().orElseThrow(), item.entry().orElseThrow().getBytes(StandardCharsets.US_ASCII));
        var hidden = new FeedPage.Item(Optional.empty(), Optional.empty(), Optional.of(digest));
        world.gives(world.upland, liar.id(), Liar.with(page, List.of(hidden)));
        world.assertDetected(world.upland, Alarm.Kind.INCONSISTENT_HEAD);
    }

    @Test
    void who_hides_its_own_release_from_some_does_not_hide_where_the_animal_is() {
        liar.says(new Statement.Offered(
                TransferId.of(UUID.randomUUID(), liar.id()),
                world.his,
                world.upland.id(),
                Liar.NOON.plusSeconds(60),
                Digests.of(Attacked.nothing())));
        world.givesAll(world.harbour);
        world.givesAll(world.upland);
        var transfer = ((Statement.Offered) Entry.read(liar.last().entry()).says()).transfer();
        world.upland.participant.accept(transfer);
        world.settle();
        var acceptance =
                world.upland.participant.entries(world.harbour.id(), world.upland.id(), 0, 100).items().stream()
                        .flatMap(item -> item.entry().stream())
                        .filter(compact -> Entry.read(compact).says() instanceof Statement.Accepted)
                        .map(compact ->
                                new Statement.Carried(Signed.parse(compact, Entry.MOST_CHARACTERS), world.upland.chain))
                        .findFirst()
                        .orElseThrow();
        liar.says(new Statement.Released(transfer, acceptance));
        world.givesAll(world.upland);
        assertThat(world.agreed(world.his)).isEqualTo(new Whereabouts.Held(world.upland.id(), false));
    }

    @Test
    void what_is_told_to_others_alone_stays_unread_by_those_who_are_not_named() {
        world.harbour.participant.write(List.of(Saying.to(
                Set.of(world.upland.id()),
                new Statement.AncestryTold(
                        world.hers, Optional.of("2024"), Optional.empty(), List.of(), true, Attacked.nothing()))));
        world.settle();
        var told = world.harbour.participant.entries(liar.id(), world.harbour.id(), 0, 100);
        var passedOn = world.upland.participant.entries(liar.id(), world.harbour.id(), 0, 100);
        for (var page : List.of(told, passedOn)) {
            assertThat(page.items()
                            .get((int) page.head().checkpoint().size() - 1)
                            .entry())
                    .isEmpty();
        }
    }

    @Test
    void who_takes_no_part_gets_nothing() {
        assertThatThrownBy(() ->
                        world.harbour.participant.entries(new Liar(world.population).id(), world.harbour.id(), 0, 10))
                .hasMessage("not-a-member");
    }

    @Test
    void a_journal_of_a_node_that_takes_no_part_is_not_taken() {
        var stranger = new Liar(world.population).opened();
        assertThat(world.gives(world.harbour, stranger.id(), stranger.page(0)).outcome())
                .isEqualTo(Outcome.REFUSED);
    }
}
