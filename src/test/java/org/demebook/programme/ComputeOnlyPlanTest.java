package org.demebook.programme;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Marrowfin.OYELARAN;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.Marrowfin;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/**
 * Of animals that may only be computed with, a season tells nothing: the one answer about them is the unordered set of unnamed
 * partners, and it is the same whether a season is planned or not. How little that set gives away is measured in
 * PedigreeGuessingTest.
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class ComputeOnlyPlanTest {
    private static final LocalDate PAIR_ON = LocalDate.now(ZoneOffset.UTC).plusMonths(6);

    @Test
    void a_season_says_nothing_of_animals_that_may_only_be_computed_with() {
        var marrowfin = Marrowfin.settled();
        var colony = marrowfin.colony;
        for (var keeper : List.of(INES, DOV, OYELARAN)) {
            colony.share(keeper, "compute-only");
        }
        // of wren's alone: a female, and a male of her own to pair her with
        var male = colony.male(WREN);
        var before = unnamed(colony, marrowfin.number(13));

        var seasons = Seasons.of(colony);
        var draft = seasons.draft(Map.of("pairOn", PAIR_ON, "litters", 1)).extract();
        var plan = seasons.issue(draft.path("id"));
        var told = new ArrayList<String>(List.of(draft.asString()));
        for (var address : List.of("", "/recommendations", "/answers", "/outcome", "/outlook", "/recomputation")) {
            told.add(colony.get(WREN, "/season-plans/" + plan + address)
                    .statusCode(200)
                    .extract()
                    .asString());
        }

        assertThat(draft.<List<String>>path("plan.litters.sire")).containsExactly(male);
        for (int id : new int[] {1, 2, 3, 4, 5, 6, 10, 11, 12, 14, 20, 21, 22, 24}) {
            if (!WREN.equals(Marrowfin.holder(id))) {
                assertThat(told).noneMatch(answer -> answer.contains("\"" + marrowfin.number(id) + "\""));
                assertThat(told).noneMatch(answer -> answer.contains(marrowfin.number(id) + " "));
            }
        }
        assertThat(unnamed(colony, marrowfin.number(13))).isEqualTo(before);
        colony.get(OYELARAN, "/season-plans/" + plan + "/recommendations")
                .statusCode(200)
                .body("animal", contains(marrowfin.number(6)))
                .body("[0].litters", nullValue());
        colony.get(OYELARAN, "/season-plans/" + plan + "/outcome")
                .statusCode(200)
                .body("litters", empty());
    }

    private static String unnamed(Colony colony, String number) {
        return colony.get(WREN, "/animals/" + number + "/unnamed-partners")
                .statusCode(200)
                .extract()
                .asString();
    }
}
