package org.demebook.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Backstage.change;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.Marrowfin.OYELARAN;
import static org.demebook.consent.Action.COMPUTE;
import static org.demebook.consent.Action.READ;
import static org.demebook.consent.FieldGroup.IDENTITY;
import static org.demebook.consent.FieldGroup.PARENTAGE;
import static org.demebook.consent.Purpose.PAIRING_COMPUTATION;
import static org.demebook.consent.Purpose.PEDIGREE_VIEW;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Marrowfin;
import org.demebook.consent.Granting;
import org.demebook.consent.Recipient;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * On the worked pedigree: of the males that are not wren's 006, 014, 022 and 024 have a kinship of at most 1/8 with 013, and
 * 012 and 021 one of 1/4.
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class UnnamedPartnersTest {
    private Marrowfin own;
    private Granting grants;

    @BeforeEach
    void settle() {
        own = Marrowfin.settledPrivate();
        grants = new Granting(own.colony.code);
    }

    @Test
    void partners_that_are_computed_with_and_not_shown_have_a_pseudonym_and_nothing_else() {
        everybodyComputes();
        var answer = partners(13)
                .statusCode(200)
                .body("animal", equalTo(own.number(13)))
                .body("month", equalTo(YearMonth.now(ZoneOffset.UTC).toString()))
                .body("partners", hasSize(4))
                .body("keySet()", hasSize(3));
        var pseudonyms = pseudonyms(answer);
        assertThat(pseudonyms).isSorted().doesNotHaveDuplicates().allMatch(name -> name.matches("[2-9A-Z]{10}"));
        // asked again the same, and of another animal nothing that could be laid beside it
        assertThat(partners(13).extract().asString()).isEqualTo(answer.extract().asString());
        assertThat(pseudonyms(partners(23).statusCode(200))).isNotEmpty().doesNotContainAnyElementsOf(pseudonyms);
    }

    @Test
    void nothing_is_proposed_where_fewer_than_three_other_households_contribute() {
        partners(13).statusCode(409).body("type", equalTo("/problems/too-few-contribute"));
        grants.computeOnly(DOV);
        grants.computeOnly(INES);
        partners(13).statusCode(409).body("detail", containsString("3 other households"));
        grants.computeOnly(OYELARAN);
        partners(13).statusCode(200);
    }

    @Test
    void an_animal_that_may_be_read_to_pair_it_is_proposed_by_number_and_not_by_pseudonym() {
        everybodyComputes();
        grants.give(
                DOV,
                Recipient.keeper(Granting.keeper(WREN)),
                List.of(own.number(22)),
                List.of(IDENTITY, PARENTAGE),
                List.of(PEDIGREE_VIEW, PAIRING_COMPUTATION),
                List.of(READ));
        partners(13).body("partners", hasSize(3));
        as(WREN).get(own.colony.path("/pairings?for=" + own.number(13)))
                .then()
                .body("pairings.sire.number", equalTo(List.of(own.number(22))));
    }

    @Test
    void whose_grant_is_withdrawn_leaves_at_once_and_the_others_keep_their_pseudonyms() {
        grants.computeOnly(INES);
        grants.computeOnly(OYELARAN);
        compute(1, 2, 3, 4, 5, 10, 11, 20, 21, 24);
        var of22 = compute(22);
        var before = pseudonyms(partners(13).body("partners", hasSize(4)));
        grants.withdraw(DOV, of22);
        var after = pseudonyms(partners(13).body("partners", hasSize(3)));
        assertThat(before).containsAll(after);
    }

    @Test
    void another_month_has_other_pseudonyms_and_forgets_those_before() {
        everybodyComputes();
        var before = pseudonyms(partners(13));
        assertThat(change(
                        "update demebook.unnamed_partners set month = (month - interval '1 month')::date"
                                + " where pseudonyms = cast(? as text[])",
                        (Object) before.toArray(String[]::new)))
                .isEqualTo(1);
        assertThat(pseudonyms(partners(13).body("partners", hasSize(4)))).doesNotContainAnyElementsOf(before);
        assertThat(ask("select count(*) from demebook.unnamed_partners where pseudonyms = cast(? as text[])", (Object)
                        before.toArray(String[]::new)))
                .containsExactly("0");
    }

    @Test
    void an_animal_of_which_the_number_may_be_read_and_the_parents_not_is_proposed_without_a_name() {
        everybodyComputes();
        grants.give(
                INES,
                Recipient.MEMBERS,
                null,
                List.of(IDENTITY),
                List.of(PEDIGREE_VIEW, PAIRING_COMPUTATION),
                List.of(READ));
        partners(13).body("partners", hasSize(4));
        as(WREN).get(own.colony.path("/pairings?for=" + own.number(13))).then().body("pairings", hasSize(0));
    }

    @Test
    void partners_are_for_ones_own_animals_that_may_breed() {
        everybodyComputes();
        partners(22).statusCode(404).body("type", equalTo("/problems/no-such-animal"));
        grants.members(DOV, PEDIGREE_VIEW, List.of(IDENTITY), READ);
        partners(22).statusCode(403).body("type", equalTo("/problems/not-your-animal"));
        var dead = own.colony.female(WREN);
        own.colony.put(WREN, dead, "/death", Map.of("on", "2024-01-01")).statusCode(200);
        as(WREN).get(own.colony.path("/animals/" + dead + "/unnamed-partners"))
                .then()
                .statusCode(409)
                .body("type", equalTo("/problems/animal-dead"));
        as(WREN).get(own.colony.path("/animals/7-7/unnamed-partners")).then().statusCode(422);
    }

    private void everybodyComputes() {
        for (var keeper : List.of(DOV, INES, OYELARAN)) {
            grants.computeOnly(keeper);
        }
    }

    private List<UUID> compute(int... ids) {
        return grants.give(
                DOV,
                Recipient.MEMBERS,
                new ArrayList<>(Arrays.stream(ids).mapToObj(own::number).toList()),
                List.of(IDENTITY, PARENTAGE),
                List.of(PAIRING_COMPUTATION),
                List.of(COMPUTE));
    }

    private ValidatableResponse partners(int id) {
        return as(WREN).get(own.colony.path("/animals/" + own.number(id) + "/unnamed-partners"))
                .then();
    }

    private static List<String> pseudonyms(ValidatableResponse answer) {
        return answer.extract().path("partners");
    }
}
