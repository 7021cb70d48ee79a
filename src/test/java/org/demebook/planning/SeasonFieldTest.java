package org.demebook.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.consent.Action.COMPUTE;
import static org.demebook.consent.FieldGroup.CUSTODY;
import static org.demebook.consent.Purpose.PAIRING_COMPUTATION;
import static org.demebook.litter.NewLitters.litter;
import static org.demebook.litter.NewLitters.with;
import static org.demebook.planning.Keeping.TODAY;
import static org.demebook.planning.Keeping.collection;
import static org.demebook.planning.Keeping.standing;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.consent.Granting;
import org.demebook.planning.SeasonField.BarrierKind;
import org.demebook.planning.SeasonField.Candidate;
import org.demebook.planning.SeasonField.Hindered;
import org.demebook.problem.Refusal;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** What a season is planned with. 90 days of quarantine are common practice, no source; days are counted on a calendar. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class SeasonFieldTest {
    @Inject
    SeasonFields fields;

    @Test
    void who_may_be_paired_is_a_candidate_and_of_the_others_it_says_why() {
        var colony = Colony.found();
        var female = colony.female(WREN);
        var male = colony.male(INES);
        var held = colony.male(INES);
        var dam = colony.register(DOV, with(animal("female", "2012-06-01"), "died", "2024"));
        var fatherless = colony.register(
                DOV, with(with(animal("female", "2019-06-01"), "dam", dam), "sire", Map.of("kind", "none")));
        var young = colony.register(DOV, animal("male", TODAY.minusYears(1).toString()));
        var resting = colony.female(DOV);
        var tested = colony.male(DOV);
        colony.register(DOV, animal("unknown", "2019-06-01"));
        colony.put(INES, held, "/breeding-hold", Map.of("reason", "thin")).statusCode(200);
        colony.post(DOV, "/litters", litter(resting, TODAY.minusDays(30).toString(), 0, 1, 0))
                .statusCode(201);
        Keeping.test(colony, DOV, tested, "nidovirus", "unclear", TODAY.minusDays(2));

        var field = fields.of(standing(colony, WREN), TODAY.plusDays(100));

        assertThat(field.females())
                .extracting(candidate -> number(field, candidate))
                .containsExactly(female);
        assertThat(field.males())
                .extracting(candidate -> number(field, candidate))
                .containsExactly(male);
        assertThat(field.hindered())
                .extracting(hindered -> field.snapshot().number(hindered.row()) + " "
                        + hindered.hindrance().word())
                .containsExactlyInAnyOrder(
                        held + " on-hold",
                        fatherless + " on-hold",
                        young + " too-young",
                        resting + " rests",
                        tested + " test");
        assertThat(field.hindered())
                .extracting(Hindered::words)
                .doesNotContain("")
                .isNotEmpty();
    }

    @Test
    void where_animals_live_together_is_used_as_far_as_custody_may_be_computed_with() {
        var colony = Colony.foundPrivate();
        var grants = new Granting(colony.code);
        grants.open(INES);
        colony.female(WREN);
        colony.male(WREN);
        colony.male(INES);
        colony.male(INES);
        var before = fields.of(standing(colony, WREN), TODAY);
        assertThat(before.places()).hasSize(3);
        assertThat(before.females().get(0).place())
                .isEqualTo(before.males().get(0).place());
        assertThat(before.places())
                .extracting(place -> place.collectionId())
                .containsExactlyInAnyOrder(UUID.fromString(collection(colony, WREN)), null, null);

        grants.members(INES, PAIRING_COMPUTATION, List.of(CUSTODY), COMPUTE);

        var after = fields.of(standing(colony, WREN), TODAY);
        assertThat(after.places())
                .extracting(place -> place.collectionId())
                .containsExactlyInAnyOrder(
                        UUID.fromString(collection(colony, WREN)), UUID.fromString(collection(colony, INES)));
    }

    @Test
    void animals_go_from_place_to_place_as_long_as_quarantine_is_over_on_the_day() {
        var colony = Colony.found();
        colony.female(WREN);
        colony.male(INES);
        var by = standing(colony, WREN);

        var inTime = fields.of(by, TODAY.plusDays(90));
        assertThat(inTime.barrier(
                        inTime.males().get(0).place(), inTime.females().get(0).place()))
                .isEmpty();

        var late = fields.of(by, TODAY.plusDays(89));
        int from = late.males().get(0).place();
        int to = late.females().get(0).place();
        assertThat(late.barrier(from, to)).get().satisfies(barrier -> {
            assertThat(barrier.kind()).isEqualTo(BarrierKind.QUARANTINE);
            assertThat(barrier.words()).contains("90 days of quarantine until " + TODAY.plusDays(90));
        });
        assertThat(late.barrier(from, from)).isEmpty();
    }

    @Test
    void what_is_granted_to_be_computed_with_alone_is_in_no_season() {
        var colony = Colony.foundPrivate();
        new Granting(colony.code).computeOnly(INES);
        colony.female(WREN);
        colony.male(INES);
        var field = fields.of(standing(colony, WREN), TODAY);
        assertThat(field.males()).isEmpty();
        assertThat(field.hindered()).isEmpty();
        assertThat(field.places()).hasSize(1);
    }

    @Test
    void a_day_that_is_over_is_refused() {
        var colony = Colony.found();
        assertThatThrownBy(() -> fields.of(standing(colony, WREN), TODAY.minusDays(1)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("is over");
    }

    private static String number(SeasonField field, Candidate candidate) {
        return field.snapshot().number(candidate.row());
    }
}
