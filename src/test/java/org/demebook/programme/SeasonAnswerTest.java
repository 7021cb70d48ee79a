package org.demebook.programme;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.Marrowfin.OYELARAN;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.Marrowfin;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** What keepers answer to a plan: 020 is dov's, 014 ines's, 013 wren's, 006 oyelaran's. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class SeasonAnswerTest {
    private static final String NOTE = "he went to the vet, between you and me";

    @Test
    void the_other_side_reads_not_this_year_whatever_the_answer_was_to_the_last_byte() {
        var world = new AnsweredPlan(Marrowfin.settled());
        var open = world.reads(DOV);
        var read = new ArrayList<List<String>>();
        for (var said : List.of(
                List.of("later", "test-due", NOTE),
                List.of("cannot", "animal-ill", NOTE),
                List.of("decline", "too-far", "not over the channel"),
                List.of("decline", "no-reason", ""))) {
            world.answer(INES, world.litter, said.get(0), said.get(1), said.get(2))
                    .statusCode(200);
            read.add(world.reads(DOV));
        }
        assertThat(read.get(0)).isNotEqualTo(open);
        assertThat(read).allMatch(read.get(0)::equals);
        assertThat(read.toString()).contains("not-this-year").doesNotContain("vet", "channel", "decline", "test-due");
        var mine = world.recommended(DOV, 20);
        assertThat(mine.getString("litters[0].state")).isEqualTo("not-this-year");
        assertThat(mine.getString("litters[0].answer")).isNull();
    }

    @Test
    void the_next_best_is_offered_to_whose_litter_is_off_and_not_to_who_cannot() {
        var world = new AnsweredPlan(Marrowfin.settled());
        assertThat(world.recommended(DOV, 20).getList("instead")).isNull();
        world.answer(INES, world.litter, "decline", "own-plans", null).statusCode(200);
        var hers = world.recommended(DOV, 20);
        assertThat(hers.getString("doing")).isEqualTo("rest");
        List<String> instead = hers.getList("instead.partner");
        assertThat(instead)
                .hasSizeBetween(1, 3)
                .doesNotContain(world.own.number(14))
                .contains(world.own.number(6));
        assertThat(hers.getString("words")).contains(instead.get(0));
        assertThat(hers.getList("instead.inbreedingOfYoung", Float.class)).allMatch(f -> f <= 0.125f);
        // he who was not wanted in this pair may be in another
        assertThat(world.recommended(INES, 14).getList("instead.partner")).contains(world.own.number(13));
        world.answer(INES, world.litter, "cannot", "animal-ill", null).statusCode(200);
        assertThat(world.recommended(INES, 14).getList("instead")).isNull();
        assertThat(world.recommended(DOV, 20).getList("instead.partner")).isEqualTo(instead);
    }

    @Test
    void both_accept_and_learn_number_collection_and_keepers_until_one_takes_it_back() {
        var world = AnsweredPlan.shownToCoordinators();
        assertThat(world.recommended(DOV, 20).getString("litters[0].partner")).isNull();
        assertThat(world.recommended(DOV, 20).getString("words")).contains("does not show to you");
        world.answer(DOV, world.litter, "accept", null, null)
                .statusCode(200)
                .body("state", equalTo("open"))
                .body("answer", equalTo("accept"));
        assertThat(world.recommended(INES, 14).getString("litters[0].partner")).isNull();
        assertThat(grants(world, INES)).isEmpty();

        world.answer(INES, world.litter, "accept", null, null).statusCode(200).body("state", equalTo("agreed"));
        var his = world.recommended(DOV, 20);
        assertThat(his.getString("litters[0].partner")).isEqualTo(world.own.number(14));
        assertThat(his.getString("litters[0].collection")).isEqualTo("ines's rack");
        assertThat(his.getList("litters[0].keepers")).isEqualTo(List.of(INES));
        assertThat(his.getString("litters[0].state")).isEqualTo("agreed");
        assertThat(world.recommended(INES, 14).getString("litters[0].partner")).isEqualTo(world.own.number(20));
        assertThat(grants(world, INES)).containsExactly("live");
        assertThat(grants(world, DOV)).containsExactly("live");
        // each was told that the other looked
        assertThat(world.colony.get(INES, "/disclosures").extract().asString()).contains(DOV);

        // the same again changes nothing
        int entries = entries(world);
        world.answer(INES, world.litter, "accept", null, " ").statusCode(200).body("state", equalTo("agreed"));
        assertThat(entries(world)).isEqualTo(entries);
        // a note more leaves the grants as they are
        world.answer(INES, world.litter, "accept", null, "from Friday on").statusCode(200);
        assertThat(entries(world)).isEqualTo(entries + 1);
        assertThat(grants(world, INES)).containsExactly("live");

        world.answer(DOV, world.litter, "later", "rests", null).statusCode(200).body("state", equalTo("not-this-year"));
        assertThat(grants(world, INES)).containsExactly("withdrawn");
        assertThat(grants(world, DOV)).containsExactly("withdrawn");
        assertThat(world.recommended(INES, 14).getString("litters[0].partner")).isNull();
        assertThat(world.recommended(INES, 14).getString("litters[0].collection"))
                .isNull();

        world.answer(DOV, world.litter, "accept", null, null).statusCode(200).body("state", equalTo("agreed"));
        assertThat(grants(world, INES)).containsExactlyInAnyOrder("withdrawn", "live");
        assertThat(world.recommended(DOV, 20).getString("litters[0].partner")).isEqualTo(world.own.number(14));
    }

    /** The states of the grants that agreements gave. */
    private static List<String> grants(AnsweredPlan world, String keeper) {
        return world.colony
                .get(keeper, "/grants")
                .extract()
                .path("items.findAll { it.fieldGroups.contains('custody') }.state");
    }

    private static int entries(AnsweredPlan world) {
        return Integer.parseInt(ask("select seq from demebook.journal_head where code = ?", world.colony.code)
                .get(0));
    }

    @Test
    void coordinators_read_reasons_and_notes_and_how_many_answered() {
        var world = new AnsweredPlan(Marrowfin.settled());
        world.answers().body("sides", equalTo(4)).body("answered", equalTo(0)).body("share", equalTo(0f));
        world.answer(INES, world.litter, "later", "test-due", NOTE).statusCode(200);
        world.answer(WREN, world.other, "accept", null, null).statusCode(200);
        world.answers()
                .body("answered", equalTo(2))
                .body("share", equalTo(0.5f))
                .body("litters.find { it.litter == '" + world.litter + "' }.state", equalTo("not-this-year"))
                .body("litters.find { it.litter == '" + world.litter + "' }.answers", hasSize(1))
                .body("litters.find { it.litter == '" + world.litter + "' }.answers[0].side", equalTo("sire"))
                .body("litters.find { it.litter == '" + world.litter + "' }.answers[0].reason", equalTo("test-due"))
                .body("litters.find { it.litter == '" + world.litter + "' }.answers[0].note", equalTo(NOTE));
        for (var member : List.of(INES, DOV)) {
            world.colony.get(member, "/season-plans/" + world.plan + "/answers").statusCode(403);
        }
        // who wrote it reads it again
        assertThat(world.recommended(INES, 14).getString("litters[0].note")).isEqualTo(NOTE);
        assertThat(world.recommended(INES, 14).getString("litters[0].reason")).isEqualTo("test-due");
    }

    @Test
    void a_note_is_not_shown_to_others_who_act_for_the_same_collection() {
        var own = Marrowfin.settled();
        String shared = own.colony
                .post(INES, "/collections", Map.of("label", "the two of us", "sharedWith", List.of(OYELARAN)))
                .statusCode(201)
                .extract()
                .path("id");
        as(INES).body(Map.of("choice", "open-pedigree"))
                .put(own.colony.path("/collections/" + shared + "/sharing"))
                .then()
                .statusCode(200);
        var male = Colony.animal("male", "2019-07-01");
        male.put("collection", shared);
        var number = own.colony.register(INES, male);
        var plan = Seasons.of(own.colony)
                .issued(Map.of(
                        "pairOn",
                        AnsweredPlan.PAIR_ON,
                        "litters",
                        1,
                        "together",
                        List.of(Map.of("dam", own.number(20), "sire", number))));
        String litter = own.colony.get(WREN, "/season-plans/" + plan).extract().path("litters[0].id");
        as(INES).body(Map.of("answer", "later", "reason", "rests", "note", NOTE))
                .put(own.colony.path("/season-plans/" + plan + "/litters/" + litter + "/answer"))
                .then()
                .statusCode(200);
        var read = own.colony
                .get(OYELARAN, "/season-plans/" + plan + "/recommendations")
                .extract()
                .jsonPath()
                .setRootPath("find { it.animal == '" + number + "' }.litters[0]");
        assertThat(read.getString("answer")).isEqualTo("later");
        assertThat(read.getString("reason")).isEqualTo("rests");
        assertThat(read.getString("note")).isNull();
    }

    @Test
    void to_whoever_holds_neither_there_is_no_such_litter() {
        var world = new AnsweredPlan(Marrowfin.settled());
        for (var stranger : List.of(OYELARAN, WREN)) {
            var hidden =
                    world.answer(stranger, world.litter, "accept", null, null).statusCode(404);
            var absent = UUID.randomUUID().toString();
            var nothing = world.answer(stranger, absent, "accept", null, null).statusCode(404);
            assertThat(hidden.extract().asString().replace(world.litter, "N"))
                    .isEqualTo(nothing.extract().asString().replace(absent, "N"))
                    .contains("no-such-proposal");
        }
        world.answers().body("answered", equalTo(0));
    }

    @Test
    void a_reason_goes_with_its_answer() {
        var world = new AnsweredPlan(Marrowfin.settled());
        world.answer(INES, world.litter, "later", null, null)
                .statusCode(422)
                .body("detail", containsString("rests, test-due, in-quarantine, not-ready"));
        world.answer(INES, world.litter, "later", "too-far", NOTE)
                .statusCode(422)
                .body("detail", not(containsString("vet")));
        world.answer(INES, world.litter, "accept", "rests", null).statusCode(422);
        world.answer(INES, world.litter, "perhaps", null, null)
                .statusCode(422)
                .body("detail", containsString("Write accept, cannot, later, decline"));
        world.answers().body("answered", equalTo(0));
    }

    @Test
    void only_the_plan_in_force_is_answered() {
        var world = new AnsweredPlan(Marrowfin.settled());
        var next = Seasons.of(world.colony).issued(Map.of("pairOn", AnsweredPlan.PAIR_ON, "follows", world.plan));
        world.answer(INES, world.litter, "accept", null, null)
                .statusCode(409)
                .body("type", equalTo("/problems/plan-not-in-force"))
                .body("detail", containsString(next));
        world.answer(INES, UUID.randomUUID().toString(), world.litter, "accept", null, null)
                .statusCode(404);
    }

    @Test
    void who_holds_both_answers_for_both_and_grants_nothing() {
        var own = Marrowfin.settled();
        own.colony
                .post(DOV, "/transfers/" + offer(own.colony, INES, own.number(14), DOV) + "/acceptance", Map.of())
                .statusCode(200);
        var world = new AnsweredPlan(own);
        world.answer(DOV, world.litter, "accept", null, null).statusCode(200).body("state", equalTo("agreed"));
        world.answers().body("answered", equalTo(2));
        assertThat(grants(world, DOV)).isEmpty();
        world.answer(INES, world.litter, "accept", null, null).statusCode(404);
    }

    private static String offer(Colony colony, String from, String animal, String to) {
        return colony.post(from, "/transfers", Map.of("animal", animal, "kind", "gift", "to", to))
                .statusCode(201)
                .extract()
                .path("transfer.id");
    }

    @Test
    void an_acceptance_of_who_held_the_animal_before_opens_nothing() {
        var world = new AnsweredPlan(Marrowfin.settled());
        world.answer(INES, world.litter, "accept", null, null).statusCode(200);
        world.colony
                .post(
                        OYELARAN,
                        "/transfers/" + offer(world.colony, INES, world.own.number(14), OYELARAN) + "/acceptance",
                        Map.of())
                .statusCode(200);
        world.answer(DOV, world.litter, "accept", null, null).statusCode(200);
        assertThat(grants(world, DOV)).isEmpty();
        assertThat(grants(world, OYELARAN)).isEmpty();
        // who has it now says so too
        world.answer(OYELARAN, world.litter, "accept", null, null).statusCode(200);
        assertThat(grants(world, DOV)).containsExactly("live");
        assertThat(grants(world, OYELARAN)).containsExactly("live");
    }

    @Test
    void an_animal_that_died_is_not_accepted_for() {
        var world = new AnsweredPlan(Marrowfin.settled());
        world.colony
                .put(
                        INES,
                        world.own.number(14),
                        "/death",
                        Map.of("on", LocalDate.now(ZoneOffset.UTC).toString()))
                .statusCode(200);
        world.answer(INES, world.litter, "accept", null, null)
                .statusCode(409)
                .body("detail", containsString("animal-dead"));
        world.answer(INES, world.litter, "cannot", "animal-dead", null).statusCode(200);
    }
}
