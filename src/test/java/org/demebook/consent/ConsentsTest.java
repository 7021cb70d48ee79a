package org.demebook.consent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.consent.Action.COMPUTE;
import static org.demebook.consent.Action.READ;
import static org.demebook.consent.ConsentStory.choose;
import static org.demebook.consent.ConsentStory.collection;
import static org.demebook.consent.ConsentStory.give;
import static org.demebook.consent.ConsentStory.grant;
import static org.demebook.consent.FieldGroup.IDENTITY;
import static org.demebook.consent.FieldGroup.NOTES;
import static org.demebook.consent.FieldGroup.PARENTAGE;
import static org.demebook.consent.Purpose.PAIRING_COMPUTATION;
import static org.demebook.consent.Purpose.PEDIGREE_VIEW;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import org.demebook.Colony;
import org.demebook.StatementCount;
import org.demebook.journal.Journal;
import org.demebook.keeper.Asker;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The door as other rooms use it: what was granted is seen at once, withdrawn ones no longer, and who saw it is written down. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class ConsentsTest {
    @Inject
    Consents consents;

    @Inject
    Disclosures disclosures;

    @Inject
    Keepers keepers;

    @Inject
    Journal journal;

    @Inject
    GrantChecks checks;

    private Colony colony;
    private Subject hers;

    @BeforeEach
    void found() {
        colony = Colony.foundPrivate();
        hers = subject(WREN);
    }

    private Subject subject(String keeper) {
        String animal = colony.get(keeper, "/animals/" + colony.female(keeper))
                .extract()
                .path("id");
        return new Subject(UUID.fromString(animal), Set.of(UUID.fromString(collection(colony, keeper))));
    }

    private Standing by(String keeper) {
        var id = UUID.fromString(
                ask("select id from demebook.keeper where name = ?", keeper).get(0));
        return keepers.standing(new Asker(id, keeper, false), colony.code);
    }

    private Lens lens(String keeper, Purpose purpose) {
        return consents.lens(by(keeper), purpose, Instant.now());
    }

    @Test
    void nothing_is_shared_until_somebody_shares_it() {
        for (var purpose : Purpose.values()) {
            var lens = lens(INES, purpose);
            for (var fieldGroup : FieldGroup.values()) {
                for (var action : Action.values()) {
                    assertThat(lens.may(hers, fieldGroup, action)).isFalse();
                }
            }
        }
        assertThat(lens(WREN, PEDIGREE_VIEW).may(hers, NOTES, READ)).isTrue();
    }

    @Test
    void what_is_granted_is_seen_by_the_next_request_and_what_is_withdrawn_no_longer() {
        assertThat(lens(INES, PEDIGREE_VIEW).may(hers, IDENTITY, READ)).isFalse();
        var id = give(colony, WREN, grant(Map.of("kind", "keeper", "name", INES)));
        var lens = lens(INES, PEDIGREE_VIEW);
        assertThat(lens.may(hers, IDENTITY, READ)).isTrue();
        assertThat(lens.grantsUsed()).containsExactly(UUID.fromString(id));
        assertThat(lens.may(hers, NOTES, READ)).isFalse();
        assertThat(lens(DOV, PEDIGREE_VIEW).may(hers, IDENTITY, READ)).isFalse();
        colony.post(WREN, "/grants/" + id + "/withdrawal", "{}").statusCode(200);
        assertThat(lens(INES, PEDIGREE_VIEW).may(hers, IDENTITY, READ)).isFalse();
    }

    @Test
    void a_choice_to_compute_only_is_computed_with_and_not_shown() {
        choose(colony, WREN, "compute-only");
        assertThat(lens(INES, PAIRING_COMPUTATION).may(hers, PARENTAGE, COMPUTE))
                .isTrue();
        for (var purpose : Purpose.values()) {
            for (var fieldGroup : FieldGroup.values()) {
                assertThat(lens(INES, purpose).may(hers, fieldGroup, READ)).isFalse();
            }
        }
    }

    @Test
    void an_open_pedigree_is_read_by_the_public_too() {
        consents.start(by(WREN), UUID.fromString(collection(colony, WREN)), ReadyChoice.OPEN_PEDIGREE);
        var somebody = Audience.PUBLIC(by(WREN).populationId());
        var lens = consents.lens(somebody, PEDIGREE_VIEW, Instant.now());
        assertThat(lens.may(hers, PARENTAGE, READ)).isTrue();
        assertThat(lens.may(hers, NOTES, READ)).isFalse();
        assertThat(lens.may(hers, FieldGroup.CUSTODY, READ)).isFalse();
    }

    @Test
    void a_read_costs_no_query_while_nothing_happens() {
        choose(colony, WREN, "open-pedigree");
        var standing = by(INES);
        long unread = StatementCount.ofThisThread();
        consents.lens(standing, PEDIGREE_VIEW, Instant.now());
        long before = StatementCount.ofThisThread();
        assertThat(before).isGreaterThan(unread);
        var lens = consents.lens(standing, PEDIGREE_VIEW, Instant.now());
        assertThat(lens.may(hers, IDENTITY, READ)).isTrue();
        assertThat(StatementCount.ofThisThread()).isEqualTo(before);
    }

    @Test
    void a_grant_whose_transaction_fails_is_never_seen_by_others() {
        colony.female(DOV); // nobody has looked since
        var standing = by(WREN);
        var failing = new NewGrant(
                null,
                new NewGrant.StatedRecipient(Recipient.Kind.PUBLIC, null, null),
                null,
                List.of(IDENTITY),
                List.of(PEDIGREE_VIEW),
                List.of(READ),
                null,
                null,
                null);
        var ines = by(INES);
        QuarkusTransaction.begin();
        journal.record(standing.populationId(), standing.keeperId(), checks.checked(standing, failing));
        // looked at in the same transaction, before anybody else has
        assertThat(consents.lens(ines, PEDIGREE_VIEW, Instant.now()).may(hers, IDENTITY, READ))
                .isTrue();
        QuarkusTransaction.rollback();
        assertThat(lens(INES, PEDIGREE_VIEW).may(hers, IDENTITY, READ)).isFalse();
    }

    // ── who saw what ─────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void the_grantor_reads_who_saw_what_on_which_grant_and_nobody_else_does() {
        var id = give(colony, WREN, grant(Map.of("kind", "keeper", "name", INES)));
        for (int request = 0; request < 3; request++) {
            var lens = lens(INES, PEDIGREE_VIEW);
            assertThat(lens.may(hers, IDENTITY, READ)).isTrue();
            assertThat(lens.may(hers, IDENTITY, READ)).isTrue();
            assertThat(lens.may(hers, NOTES, READ)).isFalse();
            consents.disclosed(lens);
            consents.disclosed(lens); // nothing new
        }
        colony.get(WREN, "/disclosures")
                .statusCode(200)
                .body("items.seenBy.name", contains(INES))
                .body("items.grant", contains(id))
                .body("items.purpose", contains("pedigree-view"))
                .body("items.action", contains("read"))
                .body("items.fieldGroup", contains("identity"))
                .body("items[0].times", equalTo(3));
        colony.get(INES, "/disclosures").body("items", empty());
        colony.get(DOV, "/disclosures").body("items", empty());
    }

    @Test
    void what_one_sees_of_ones_own_is_nobodys_disclosure() {
        var lens = lens(WREN, PEDIGREE_VIEW);
        assertThat(lens.may(hers, NOTES, READ)).isTrue();
        consents.disclosed(lens);
        colony.get(WREN, "/disclosures").body("items", empty());
    }

    @Test
    void the_list_of_disclosures_comes_in_pages_without_gap_or_repetition() {
        choose(colony, WREN, "open-pedigree");
        var all = new ArrayList<String>();
        var somebody = consents.lens(Audience.PUBLIC(by(WREN).populationId()), PEDIGREE_VIEW, Instant.now());
        for (var lens : List.of(somebody, lens(INES, PEDIGREE_VIEW), lens(DOV, PEDIGREE_VIEW))) {
            for (var fieldGroup : FieldGroup.values()) {
                lens.may(hers, fieldGroup, READ);
            }
            consents.disclosed(lens);
        }
        String next = "";
        do {
            var page = colony.get(WREN, "/disclosures?limit=2" + (next.isEmpty() ? "" : "&after=" + next))
                    .statusCode(200)
                    .extract();
            all.addAll(page.path("items.collect { it.seenBy.toString() + it.fieldGroup }"));
            next = page.path("next");
        } while (next != null);
        assertThat(all).doesNotHaveDuplicates().hasSize(3 + 4 + 4);
    }

    @Test
    void readers_write_at_once_without_waiting_in_a_circle_or_losing_a_count() throws Exception {
        var other = subject(DOV);
        for (var keeper : List.of(WREN, DOV)) {
            choose(colony, keeper, "open-pedigree");
        }
        var standing = by(INES);
        var readers = new ArrayList<Callable<Void>>();
        for (int n = 0; n < 40; n++) {
            var order = n % 2 == 0 ? List.of(hers, other) : List.of(other, hers);
            readers.add(() -> {
                var lens = consents.lens(standing, PEDIGREE_VIEW, Instant.now());
                order.forEach(subject -> lens.may(subject, IDENTITY, READ));
                consents.disclosed(lens);
                return null;
            });
        }
        var pool = Executors.newFixedThreadPool(8);
        try {
            for (var done : pool.invokeAll(readers)) {
                done.get();
            }
        } finally {
            pool.shutdown();
        }
        colony.get(WREN, "/disclosures").body("items.times", contains(40));
        colony.get(DOV, "/disclosures").body("items.times", contains(40));
    }

    @Test
    void a_reader_does_not_wait_for_somebody_who_holds_the_population() {
        give(colony, WREN, grant(Map.of("kind", "members")));
        var lens = lens(INES, PEDIGREE_VIEW);
        lens.may(hers, IDENTITY, READ);
        QuarkusTransaction.requiringNew().run(() -> {
            journal.open(by(WREN).populationId());
            QuarkusTransaction.requiringNew().timeout(5).run(() -> disclosures.record(lens));
        });
        colony.get(WREN, "/disclosures").body("items.times", contains(1));
    }
}
