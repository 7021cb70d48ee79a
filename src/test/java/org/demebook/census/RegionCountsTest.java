package org.demebook.census;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.anonymous;
import static org.demebook.Colony.as;
import static org.demebook.litter.NewLitters.litter;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.demebook.Colony;
import org.demebook.keeper.RegionStory;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** Each of three keepers has a collection in each of three regions; so every region has three households. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class RegionCountsTest {
    private static final String[] KEEPERS = {WREN, INES, DOV};
    private static final String[] REGIONS = {"North", "Middle", "South"};
    private static final String LAST_YEAR = "2024-06-01";
    private static final String THIS_YEAR = "2025-06-01";

    /** By keeper and region. */
    private final Map<String, String> collections = new HashMap<>();

    // E4: Middle total 28 last year; a litter of 11 is all that came since, from one keeper
    @Test
    void a_litter_that_one_keeper_alone_reports_is_not_the_difference_of_two_years() {
        var colony = threeRegions();
        fill(colony);
        var dam = put(colony, DOV, "Middle", "female", "2019-06-01");
        release(colony, LAST_YEAR)
                .body(region("Middle", "count"), equalTo(28))
                .body(region("all", "count"), equalTo(52));

        var young = litter(dam, "2024-07-15", 11);
        young.put("collection", collections.get(DOV + "Middle"));
        colony.post(DOV, "/litters", young).statusCode(201);
        var second = release(colony, THIS_YEAR)
                .body(region("Middle", "count"), nullValue())
                .body(region("Middle", "informationWithheld"), containsString("withheld"))
                .body(region("all", "count"), nullValue())
                .body(region("North", "count"), equalTo(12))
                .body(region("South", "count"), equalTo(12))
                .extract();
        int lowest = second.path(region("Middle", "lowest"));
        Integer highest = second.path(region("Middle", "highest"));
        assertThat(lowest).isLessThan(39);
        assertThat(highest == null || highest > 39).isTrue();
    }

    @Test
    void where_enough_changed_in_a_region_it_is_told_again() {
        var colony = threeRegions();
        fill(colony);
        release(colony, LAST_YEAR).body(region("Middle", "count"), equalTo(27));
        for (var keeper : KEEPERS) {
            put(colony, keeper, "Middle", "female", "2024-07-15");
        }
        release(colony, THIS_YEAR)
                .body(region("Middle", "count"), equalTo(30))
                .body(region("all", "count"), equalTo(54));
    }

    @Test
    void a_region_is_counted_only_where_place_and_identity_are_granted_for_counting() {
        var colony = threeRegions();
        fill(colony);
        // in place of all three choices grants of identity alone: whoever looks at the total sees no difference
        for (var keeper : KEEPERS) {
            share(colony, keeper, "South", "private");
            grant(colony, keeper, "South", "identity");
        }
        release(colony, THIS_YEAR)
                .body(region("South", "count"), equalTo(0))
                .body(region("not stated", "count"), equalTo(12))
                .body(region("all", "count"), equalTo(51));
    }

    @Test
    void what_only_one_of_two_parties_lets_be_counted_in_its_region_is_not_stated() {
        var colony = threeRegions();
        fill(colony);
        share(colony, WREN, "South", "private");
        grant(colony, WREN, "South", "identity");
        for (var keeper : new String[] {INES, DOV}) {
            var lent = put(colony, WREN, "South", "female", "2019-06-01");
            String id = colony.post(WREN, "/transfers", Map.of("animal", lent, "kind", "breeding-loan", "to", keeper))
                    .statusCode(201)
                    .extract()
                    .path("transfer.id");
            colony.post(
                            keeper,
                            "/transfers/" + id + "/acceptance",
                            Map.of("collection", collections.get(keeper + "North")))
                    .statusCode(200);
        }
        release(colony, THIS_YEAR).statusCode(201);
        // of 4 + 2 animals of Wren's South wall none is counted in a region, wherever it lives
        assertThat(ask(
                        "select b.body from demebook.count_basis b join demebook.population p"
                                + " on p.population_id = b.population_id where p.code = ?",
                        colony.code))
                .singleElement()
                .satisfies(
                        body -> assertThat(body.split("\"region\":\"North\"")).hasSize(1 + 12))
                .satisfies(
                        body -> assertThat(body.split("\"region\":\"South\"")).hasSize(1 + 8));
    }

    @Test
    void a_release_of_before_there_were_regions_and_one_after_are_judged_together() {
        var colony = Colony.found();
        openCollections(colony);
        fill(colony);
        release(colony, LAST_YEAR)
                .body("cells.region", everyItem(equalTo("all")))
                .body(region("all", "count"), equalTo(51));

        stateRegions(colony);
        put(colony, DOV, "Middle", "female", "2019-06-01");
        // 52 would tell that one came, and so would the regions where they add up to it
        var counts = release(colony, THIS_YEAR)
                .body(region("all", "count"), nullValue())
                .extract();
        assertThat(Stream.of(REGIONS).map(region -> counts.<Integer>path(region(region, "count"))))
                .containsOnlyOnce((Integer) null)
                .isSubsetOf(12, 28, null);
    }

    @Test
    void where_no_regions_are_fixed_there_is_no_table_of_them() {
        var colony = Colony.found();
        CountStory.everyoneHasSome(colony);
        release(colony, THIS_YEAR)
                .body("cells.region", everyItem(equalTo("all")))
                .body("method", not(containsString("region")));
        open(colony, "/darwin-core-regions.zip").statusCode(404).body("type", equalTo("/problems/no-such-release"));
    }

    @Test
    void regions_stand_in_the_sheet_and_have_an_archive_of_their_own() {
        var colony = threeRegions();
        fill(colony);
        release(colony, THIS_YEAR).body("method", containsString("by region"));
        assertThat(open(colony, "/table.csv").extract().asString().split("\r\n"))
                .startsWith("population,countedOn,sex,age,born,region,count,lowest,highest,informationWithheld")
                .contains("%s,%s,all,all,all,Middle,27,,,".formatted(colony.code, THIS_YEAR))
                .contains("%s,%s,all,all,all,not stated,0,,,".formatted(colony.code, THIS_YEAR));
        var archive = open(colony, "/darwin-core-regions.zip")
                .statusCode(200)
                .contentType("application/zip")
                .extract()
                .asByteArray();
        assertThat(DarwinCoreArchiveTest.unpack(archive).get("occurrence.csv"))
                .contains("higherGeography")
                .contains("Middle")
                .contains("captive");
        assertThat(DarwinCoreArchiveTest.unpack(
                                open(colony, "/darwin-core.zip").extract().asByteArray())
                        .get("occurrence.csv"))
                .doesNotContain("Middle");
    }

    // ── helpers ──────────────────────────────────────────────────────────────────────────────────────────────────────

    private Colony threeRegions() {
        var colony = Colony.found();
        openCollections(colony);
        stateRegions(colony);
        return colony;
    }

    private void openCollections(Colony colony) {
        for (var keeper : KEEPERS) {
            for (var region : REGIONS) {
                String id = colony.post(keeper, "/collections", Map.of("label", region))
                        .statusCode(201)
                        .extract()
                        .path("id");
                collections.put(keeper + region, id);
                share(colony, keeper, region, "compute-only");
            }
        }
    }

    private void stateRegions(Colony colony) {
        RegionStory.fix(colony, REGIONS).statusCode(200);
        for (var keeper : KEEPERS) {
            for (var region : REGIONS) {
                RegionStory.state(colony, keeper, collections.get(keeper + region), region)
                        .statusCode(200);
            }
        }
    }

    /** Four with each keeper in the North and the South, nine in the Middle: 12, 27 and 12. */
    private void fill(Colony colony) {
        for (var keeper : KEEPERS) {
            for (var region : REGIONS) {
                int adults = region.equals("Middle") ? 7 : 2;
                for (int i = 0; i < adults; i++) {
                    put(colony, keeper, region, i % 2 == 0 ? "female" : "male", "2017-06-01");
                }
                put(colony, keeper, region, "female", "2022-01-15");
                put(colony, keeper, region, "male", "2022-01-15");
            }
        }
    }

    private String put(Colony colony, String keeper, String region, String sex, String born) {
        var animal = animal(sex, born);
        animal.put("collection", collections.get(keeper + region));
        return colony.register(keeper, animal);
    }

    private void share(Colony colony, String keeper, String region, String choice) {
        as(keeper)
                .body(Map.of("choice", choice))
                .put(colony.path("/collections/" + collections.get(keeper + region) + "/sharing"))
                .then()
                .statusCode(200);
    }

    private void grant(Colony colony, String keeper, String region, String group) {
        colony.post(
                        keeper,
                        "/grants",
                        Map.of(
                                "collection", collections.get(keeper + region),
                                "recipient", Map.of("kind", "public"),
                                "fieldGroups", List.of(group),
                                "purposes", List.of("public-counts"),
                                "actions", List.of("compute", "publish-in-aggregate")))
                .statusCode(201);
    }

    private static ValidatableResponse release(Colony colony, String day) {
        return colony.post(WREN, "/count-releases", Map.of("countedOn", day)).statusCode(201);
    }

    private static ValidatableResponse open(Colony colony, String below) {
        return anonymous()
                .get(colony.path("/count-releases/" + THIS_YEAR + below))
                .then();
    }

    private static String region(String region, String field) {
        return "cells.find { it.sex == 'all' && it.age == 'all' && it.born == 'all' && it.region == '%s' }.%s"
                .formatted(region, field);
    }
}
