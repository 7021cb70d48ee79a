package org.demebook.programme;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.planning.Keeping;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Each of what may hold a plan back changes it: the same season is computed without and with it. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class SeasonConstraintsTest {
    private static final LocalDate TODAY = LocalDate.now(ZoneOffset.UTC);

    private Colony colony;
    private Seasons seasons;
    private String female;
    /** A wild-caught male without young, with ines. */
    private String rare;
    /** A wild-caught male with living young, with dov. */
    private String common;

    @BeforeEach
    void settle() {
        colony = Colony.found();
        seasons = Seasons.of(colony);
        female = founder(WREN, "female");
        rare = founder(INES, "male");
        common = founder(DOV, "male");
        var dam = animal("female", "2015");
        dam.put("died", TODAY.minusMonths(1).toString());
        var dead = colony.register(DOV, dam);
        for (int young = 0; young < 2; young++) {
            colony.young(DOV, "female", TODAY.minusMonths(20).toString(), dead, common);
        }
    }

    private String founder(String keeper, String sex) {
        var founder = animal(sex, "2018");
        founder.put("origin", "wild-caught");
        return colony.register(keeper, founder);
    }

    private static Map<String, Object> season(int litters) {
        var season = new HashMap<String, Object>();
        season.put("pairOn", TODAY.plusMonths(6));
        season.put("litters", litters);
        return season;
    }

    private static Map<String, Object> season(int litters, String field, Object value) {
        var season = season(litters);
        season.put(field, value);
        return season;
    }

    private List<String> sires(Map<String, Object> asked) {
        return seasons.draft(asked).extract().path("plan.litters.sire");
    }

    private List<String> dams(Map<String, Object> asked) {
        return seasons.draft(asked).extract().path("plan.litters.dam");
    }

    private String state(Map<String, Object> asked) {
        return seasons.draft(asked).extract().path("state");
    }

    private Map<String, Object> pair(String sire) {
        return Map.of("dam", female, "sire", sire);
    }

    @Test
    void what_a_coordinator_rules_out_or_wants() {
        assertThat(sires(season(1))).containsExactly(rare);
        assertThat(sires(season(1, "apart", List.of(pair(rare))))).containsExactly(common);
        assertThat(sires(season(1, "leftOut", List.of(rare)))).containsExactly(common);
        assertThat(sires(season(1, "together", List.of(pair(common))))).containsExactly(common);
        assertThat(sires(season(1, "whatIf", Map.of("lost", List.of(rare))))).containsExactly(common);
    }

    @Test
    void a_male_with_as_many_litters_as_he_may_have() {
        founder(WREN, "female");
        assertThat(sires(season(2))).containsExactly(rare, rare);
        assertThat(sires(season(2, "littersOfMale", 1))).containsExactlyInAnyOrder(rare, common);
    }

    @Test
    void young_more_inbred_than_is_wanted() {
        var dam = animal("female", "2014");
        dam.put("died", "2024");
        var mother = colony.register(WREN, dam);
        var sire = animal("male", "2014");
        sire.put("died", "2024");
        var father = colony.register(WREN, sire);
        var sister = colony.young(WREN, "female", "2019-06-01", mother, father);
        var brother = colony.young(INES, "male", "2019-06-01", mother, father);
        var others = season(1, "leftOut", List.of(rare, common, female));
        assertThat(state(others)).isEqualTo("impossible");
        others.put("maximumInbreeding", .25);
        assertThat(sires(others)).containsExactly(brother);
        assertThat(dams(others)).containsExactly(sister);
    }

    @Test
    void an_animal_of_whose_ancestry_too_little_is_known() {
        var unknown = colony.male(INES);
        var asked = season(1, "leftOut", List.of(rare));
        assertThat(sires(asked)).containsExactly(unknown);
        asked.put("leastKnownAncestry", .5);
        assertThat(sires(asked)).containsExactly(common);
    }

    @Test
    void litters_wanted_and_litters_at_most() {
        founder(WREN, "female");
        assertThat(sires(season(2))).hasSize(2);
        assertThat(sires(season(1))).hasSize(1);
        var atMost = season(0);
        atMost.remove("litters");
        atMost.put("littersAtMost", 0);
        assertThat(sires(atMost)).isEmpty();
    }

    @Test
    void an_animal_on_hold() {
        assertThat(sires(season(1))).containsExactly(rare);
        colony.put(INES, rare, "/breeding-hold", Map.of("reason", "thin")).statusCode(200);
        assertThat(sires(season(1))).containsExactly(common);
    }

    @Test
    void an_animal_too_young_on_the_day() {
        var young = animal("male", TODAY.minusDays(1095 - 200).toString());
        young.put("origin", "wild-caught");
        var growing = colony.register(INES, young);
        var asked = season(1, "leftOut", List.of(rare));
        assertThat(sires(asked)).containsExactly(common);
        asked.put("pairOn", TODAY.plusDays(210));
        assertThat(sires(asked)).containsExactly(growing);
    }

    @Test
    void an_animal_that_cannot_be_there_in_time_for_its_quarantine() {
        var home = colony.male(WREN);
        assertThat(sires(season(1))).containsExactly(rare);
        assertThat(sires(season(1, "pairOn", TODAY.plusDays(30)))).containsExactly(home);
    }

    @Test
    void an_animal_whose_keeper_does_not_grant_it() {
        assertThat(sires(season(1))).containsExactly(rare);
        colony.share(INES, "compute-only");
        assertThat(sires(season(1))).containsExactly(common);
        colony.share(INES, "private");
        assertThat(sires(season(1))).containsExactly(common);
    }

    @Test
    void a_collection_with_as_many_litters_as_it_takes() {
        var elsewhere = founder(DOV, "female");
        founder(WREN, "female");
        var capacity = Map.of("capacity", List.of(Map.of("animal", female, "litters", 1)));
        var asked = season(2, "leftOut", List.of(elsewhere));
        assertThat(dams(asked)).hasSize(2);
        asked.put("whatIf", capacity);
        assertThat(state(asked)).isEqualTo("impossible");
        assertThat(dams(season(2, "whatIf", capacity))).contains(elsewhere);
    }

    // scenario D3
    @Test
    void an_animal_whose_test_is_not_in_date() {
        assertThat(sires(season(1))).containsExactly(rare);
        Keeping.test(colony, INES, rare, "nidovirus", "negative", TODAY.minusMonths(14));
        assertThat(sires(season(1))).containsExactly(common);
    }

    @Test
    void a_female_that_rests() {
        var other = founder(WREN, "female");
        var young = colony.young(WREN, "male", TODAY.minusMonths(1).toString(), female, common);
        var asked = season(1, "together", List.of(Map.of("dam", other, "sire", common)));
        asked.put("litters", 2);
        asked.put("pairOn", TODAY.plusDays(100));
        assertThat(state(asked)).isEqualTo("impossible");
        asked.put("pairOn", TODAY.plusMonths(10));
        assertThat(dams(asked)).containsExactlyInAnyOrder(female, other);
        assertThat(young).isNotBlank();
    }

    @Test
    void an_animal_that_will_soon_be_too_old() {
        var ageing = animal("female", TODAY.minusYears(18).plusMonths(3).toString());
        ageing.put("origin", "wild-caught");
        var old = colony.register(WREN, ageing);
        colony.young(WREN, "female", TODAY.minusMonths(30).toString(), old, common);
        var asked = season(1);
        asked.put("lookAhead", false);
        assertThat(dams(asked)).containsExactly(female);
        asked.put("lookAhead", true);
        var ahead = seasons.draft(asked);
        assertThat(ahead.extract().<List<String>>path("plan.litters.dam")).containsExactly(old);
        assertThat(ahead.extract().<Float>path("plan.ofTheLiving.after")).isPositive();
    }

    @Test
    void litters_that_a_keeper_has_room_for() {
        founder(WREN, "female");
        assertThat(dams(season(2))).hasSize(2);
        Keeping.state(colony, WREN, Map.of("littersAtMost", 1)).statusCode(200);
        assertThat(state(season(2))).isEqualTo("impossible");
    }

    @Test
    void males_that_a_keeper_lets_go() {
        var elsewhere = founder(DOV, "female");
        assertThat(sires(season(2, "littersOfMale", 1))).containsExactlyInAnyOrder(rare, common);
        Keeping.state(colony, INES, Map.of("malesAwayAtMost", 0)).statusCode(200);
        // dov's own female is left for dov's own male
        assertThat(sires(season(1))).containsExactly(common);
        assertThat(elsewhere).isNotBlank();
    }

    @Test
    void regions_distances_and_borders_that_a_keeper_wants() {
        Keeping.inRegions(colony);
        Keeping.region(colony, WREN, "North");
        Keeping.region(colony, INES, "South");
        Keeping.region(colony, DOV, "North");
        assertThat(sires(season(1))).containsExactly(rare);
        for (var terms : List.<Map<String, Object>>of(
                Map.of("exchangeWith", List.of("South")),
                Map.of("farthestKilometres", 400),
                Map.of("mayCrossBorders", false))) {
            Keeping.state(colony, INES, terms).statusCode(200);
            assertThat(sires(season(1))).as(terms.toString()).containsExactly(common);
        }
        Keeping.state(colony, INES, Map.of("farthestKilometres", 450)).statusCode(200);
        assertThat(sires(season(1))).containsExactly(rare);
    }
}
