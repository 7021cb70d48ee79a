package org.demebook.programme;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Marrowfin.OYELARAN;
import static org.demebook.litter.NewLitters.with;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.path.json.config.JsonPathConfig;
import io.restassured.path.json.config.JsonPathConfig.NumberReturnType;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Marrowfin;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Fractions are those of the worked pedigree, computed in exact rational arithmetic apart from this code. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class OutlookTest {
    private static final LocalDate PAIR_ON = LocalDate.now(ZoneOffset.UTC).plusMonths(6);
    /** Nobody leaves, and there is room. */
    private static final String ROOMY = "?seasons=4&breedsUntilAge=90&places=500";

    private static Marrowfin asItWas;

    private Marrowfin marrowfin;
    private Seasons seasons;

    @BeforeAll
    static void settle() {
        asItWas = Marrowfin.settled();
    }

    @BeforeEach
    void look() {
        marrowfin = asItWas;
        seasons = Seasons.of(marrowfin.colony);
    }

    private void afresh() {
        marrowfin = Marrowfin.settled();
        seasons = Seasons.of(marrowfin.colony);
    }

    private static Map<String, Object> season(int litters, double chance, int young) {
        var season = new HashMap<String, Object>();
        season.put("pairOn", PAIR_ON);
        season.put("litters", litters);
        season.put("youngKept", young);
        season.put("chanceOfLitter", chance);
        return season;
    }

    private String ofDraft(Map<String, Object> asked) {
        return "/season-drafts/" + seasons.draft(asked).extract().<String>path("id") + "/outlook";
    }

    private JsonPath told(String path) {
        return JsonPath.from(marrowfin
                        .colony
                        .get(WREN, path)
                        .statusCode(200)
                        .extract()
                        .asString())
                .using(new JsonPathConfig(NumberReturnType.DOUBLE));
    }

    /** .85625 with one young of 013 × 006, 551/648 without (worked pedigree). */
    @Test
    void the_first_season_is_the_plans_and_certain_if_its_litters_are() {
        var outlook = told(ofDraft(season(1, 1, 1)) + ROOMY);
        assertThat(outlook.getList("seasons.season")).hasSize(5);
        assertThat(outlook.getDouble("seasons[0].geneDiversity")).isEqualTo(551. / 648);
        assertThat(outlook.getDouble("seasons[1].geneDiversity")).isEqualTo(.85625);
        assertThat(outlook.getList("seasons.animals")).startsWith(9, 10).endsWith(13);
        for (var end : List.of("mean", "low", "high")) {
            assertThat(outlook.getDouble("afterThisSeason.geneDiversity." + end))
                    .isCloseTo(.85625, within(1e-12));
        }
        double genes = outlook.getDouble("afterThisSeason.geneDiversityOfGenes.high")
                - outlook.getDouble("afterThisSeason.geneDiversityOfGenes.low");
        assertThat(genes).isPositive();
    }

    /** One litter of one young comes or not, by the toss of a coin: the ends of the interval are the two. */
    @Test
    void litters_that_fail_are_in_the_interval() {
        var outlook = told(ofDraft(season(1, .5, 1)) + ROOMY);
        assertThat(outlook.getDouble("afterThisSeason.geneDiversity.low")).isEqualTo(551. / 648);
        assertThat(outlook.getDouble("afterThisSeason.geneDiversity.high")).isEqualTo(.85625);
        assertThat(outlook.getDouble("seasons[1].drawn.low")).isEqualTo(551. / 648);
        assertThat(outlook.getDouble("seasons[1].drawn.high")).isEqualTo(.85625);
    }

    @Test
    void a_target_is_told_with_years_and_not_invented() {
        var path = ofDraft(season(2, .7, 2));
        marrowfin
                .colony
                .get(WREN, path + "?seasons=6")
                .statusCode(200)
                .body("target", nullValue())
                .body("withFounders.yearsUntilTarget", nullValue())
                .body("summary", startsWith("In 6 years gene diversity is about "));
        marrowfin
                .colony
                .get(WREN, path + "?seasons=6&target=0.9&yearsBetween=2")
                .statusCode(200)
                .body("target.expected.years", equalTo(0f))
                .body("seasons[1].years", equalTo(2f))
                .body("summary", containsString("In 12 years"))
                .body("summary", containsString("It is below 0.9 today."));
        var far = told(path + "?seasons=6&target=0.8");
        assertThat(far.getDouble("target.drawn.years")).isPositive();
        assertThat(far.getDouble("target.soonest.years")).isLessThanOrEqualTo(far.getDouble("target.latest.years"));
    }

    /** A founder in a pool of nine: (81·MK + ½)/100 at once, and after seasons still more than without. */
    @Test
    void more_founders_are_held_against_none() {
        var path = ofDraft(season(2, 1, 1)) + ROOMY;
        var one = told(path);
        var four = told(path + "&founders=4");
        assertThat(one.getDouble("withFounders.more")).isPositive();
        assertThat(four.getDouble("withFounders.more")).isGreaterThan(one.getDouble("withFounders.more"));
        assertThat(four.getString("withFounders.what"))
                .startsWith("4 unrelated founders join today, 2 of them females");
        assertThat(one.getDouble("withFounders.geneDiversity") - one.getDouble("withFounders.more"))
                .isCloseTo(one.getDouble("seasons[4].geneDiversity"), within(1e-12));
    }

    /** 006 has no young; 004's genes are in 012, 013, 020, 021 and 024, so nothing is said of it. */
    @Test
    void founders_whose_genes_hang_on_few_are_told_with_the_animals_on_which_they_hang() {
        var outlook = marrowfin.colony.get(WREN, ofDraft(season(1, .5, 1)) + "?breedsUntilAge=90");
        outlook.statusCode(200)
                .body("lastChances.find { it.founder == '%s' }.animals".formatted(number(6)), contains(number(6)))
                .body("lastChances.find { it.founder == '%s' }.last".formatted(number(6)), equalTo(false))
                .body("lastChances.find { it.founder == '%s' }.chanceOfLoss".formatted(number(6)), equalTo(0f))
                .body("lastChances.find { it.founder == '%s' }.geneDiversityLost".formatted(number(6)), greaterThan(0f))
                .body("lastChances.find { it.founder == '%s' }".formatted(number(4)), nullValue());
        // born nobody knows when, 006 stays half a life; with two years of it this is its last season
        var last = told(ofDraft(season(1, .5, 1)) + "?breedsUntilAge=3");
        var of006 = "lastChances.find { it.founder == '%s' }.".formatted(number(6));
        assertThat(last.getBoolean(of006 + "last")).isTrue();
        assertThat(last.getDouble(of006 + "chanceOfLoss")).isBetween(.4, .6);
        assertThat(last.getString(of006 + "words")).contains("and not after this season");
    }

    private String number(int id) {
        return marrowfin.number(id);
    }

    @Test
    void what_is_only_imagined_is_looked_ahead_from_too() {
        var asked = with(season(2, 1, 1), "whatIf", Map.of("newMales", 1));
        var imagined = told(ofDraft(asked) + ROOMY);
        var plain = told(ofDraft(season(2, 1, 1)) + ROOMY);
        assertThat(imagined.getInt("seasons[0].animals")).isEqualTo(plain.getInt("seasons[0].animals") + 1);
        assertThat(imagined.getInt("seasons[1].litters")).isEqualTo(2);
        assertThat(imagined.getList("lastChances.founder", String.class)).contains("new founder 1");
        var lost = told(ofDraft(with(season(1, 1, 1), "whatIf", Map.of("lost", List.of(number(6))))) + ROOMY);
        assertThat(lost.getInt("seasons[0].animals")).isEqualTo(8);
    }

    @Test
    void an_issued_plan_is_looked_ahead_from_as_its_draft_was_and_the_same_question_has_the_same_answer() {
        afresh();
        var draft = seasons.draft(season(2, .7, 2)).extract().<String>path("id");
        var before = body("/season-drafts/" + draft + "/outlook" + ROOMY);
        var plan = seasons.issue(draft);
        assertThat(body("/season-plans/" + plan + "/outlook" + ROOMY)).isEqualTo(before);
        assertThat(body("/season-plans/" + plan + "/outlook" + ROOMY)).isEqualTo(before);
    }

    private String body(String path) {
        return marrowfin.colony.get(WREN, path).statusCode(200).extract().asString();
    }

    @Test
    void animals_that_may_only_be_computed_with_are_named_nowhere_and_breed_in_no_season() {
        afresh();
        marrowfin.colony.share(OYELARAN, "compute-only");
        var told = marrowfin.colony.get(WREN, ofDraft(season(2, 1, 1)) + "?seasons=3");
        told.statusCode(200).body("seasons[0].animals", equalTo(9));
        assertThat(told.extract().asString()).doesNotContain(number(6), OYELARAN);
    }

    @Test
    void litters_of_animals_that_are_not_shown_any_more_are_left_out() {
        afresh();
        var plan = seasons.issued(season(1, 1, 1));
        marrowfin.colony.share(OYELARAN, "private");
        marrowfin
                .colony
                .get(WREN, "/season-plans/" + plan + "/outlook" + ROOMY)
                .statusCode(200)
                .body("seasons[1].litters", equalTo(0))
                .body("lastChances.founder", not(contains(number(6))));
    }

    @Test
    void it_is_for_coordinators_and_of_what_there_is() {
        afresh();
        var draft = seasons.draft(season(1, 1, 1)).extract().<String>path("id");
        var plan = seasons.issue(draft);
        for (var path : List.of("/season-drafts/" + draft, "/season-plans/" + plan)) {
            marrowfin
                    .colony
                    .get(INES, path + "/outlook")
                    .statusCode(403)
                    .body("type", equalTo("/problems/not-allowed"));
        }
        marrowfin
                .colony
                .get(WREN, "/season-drafts/" + UUID.randomUUID() + "/outlook")
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-draft"));
        marrowfin
                .colony
                .get(WREN, "/season-plans/" + UUID.randomUUID() + "/outlook")
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-plan"));
        for (var wrong :
                List.of("seasons=0", "seasons=31", "target=1.5", "founders=0", "yearsBetween=NaN", "places=0")) {
            marrowfin
                    .colony
                    .get(WREN, "/season-plans/" + plan + "/outlook?" + wrong)
                    .statusCode(400)
                    .body("type", equalTo("/problems/bad-parameter"));
        }
        var impossible = with(
                with(season(2, 1, 1), "littersOfMale", 1),
                "leftOut",
                List.of(number(12), number(14), number(21), number(22), number(24)));
        marrowfin
                .colony
                .get(WREN, ofDraft(impossible))
                .statusCode(409)
                .body("type", equalTo("/problems/draft-not-ready"))
                .body("detail", containsString("it is impossible"));
    }
}
