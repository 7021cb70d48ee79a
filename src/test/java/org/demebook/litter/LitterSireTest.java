package org.demebook.litter;

import static org.demebook.Colony.WREN;
import static org.demebook.litter.NewLitters.introduce;
import static org.demebook.litter.NewLitters.known;
import static org.demebook.litter.NewLitters.litter;
import static org.demebook.litter.NewLitters.noted;
import static org.demebook.litter.NewLitters.with;
import static org.demebook.litter.NewLitters.workedOut;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThan;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.hamcrest.Matcher;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The sire of a litter as the males that its dam met tell it. Scenarios of the trade, common practice, no source. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class LitterSireTest {
    private static final double SIBLINGS = (1 + 0.5461 * 0.5461 + 0.4539 * 0.4539) / 8;

    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    // scenario A4: 013 was with 014 from 2026-01-05 to 2026-02-20 and shed on 2026-03-14, 107 days before the birth
    @Test
    void a_litter_is_registered_with_the_only_male_and_the_days_from_the_shed() {
        var dam = colony.female(WREN);
        var male = colony.male(WREN);
        introduce(colony, dam, male, "2026-01-05", "2026-02-20");
        noted(colony, dam, "post-ovulation-shed", "2026-03-14");
        var litter = with(with(litter(dam, "2026-06-29", 11, 1, 2), "malformedLive", 1), "sire", workedOut());

        colony.post(WREN, "/litters", litter)
                .statusCode(201)
                .body("daysFromShed", equalTo(107))
                .body("litter.ovaFound", equalTo(14))
                .body("litter.sire", equalTo(Map.of("kind", "known", "animal", male)))
                .body("young", hasSize(11))
                .body("young.sire.animal", everyItem(equalTo(male)))
                .body("warnings.field", contains("sire.kind"))
                .body("warnings.level", contains("notice"));
    }

    /** Scenario A9. */
    @Test
    void a_test_fixes_one_neonate_of_two_possible_sires_without_touching_the_rest() {
        var dam = colony.female(WREN);
        var january = colony.male(WREN);
        var february = colony.male(WREN);
        introduce(colony, dam, january, "2026-01-05", "2026-01-31");
        introduce(colony, dam, february, "2026-02-01", "2026-02-28");
        noted(colony, dam, "ovulation", "2026-02-24");
        // nobody says that one male sired them all
        List<String> young = colony.post(WREN, "/litters", with(litter(dam, "2026-06-29", 4), "sire", workedOut()))
                .statusCode(201)
                .body("young[3].sire.candidates.animal", contains(february, january))
                .body("young[3].sire.candidates.probability", contains(0.5461f, 0.4539f))
                .body("young[3].sire.wholeLitter", equalTo(false))
                .body("warnings.message[0]", containsString("Each young may have another"))
                .extract()
                .path("young.number");
        // with a sire ½ · ½, times his share: 1 for who was there on the day of the ovulation, 2^(−24/90) for who left
        // 24
        // days before, over their sum
        kinship(young.get(0), february, 0.5461 / 4);
        kinship(young.get(0), january, 0.4539 / 4);
        // of unrelated parents ¼ with one sire, ⅛ with two: ⅛ + ⅛ · (p² + q²)
        kinship(young.get(0), young.get(1), SIBLINGS);

        colony.put(WREN, young.get(0), "/parentage", Map.of("dam", dam, "sire", known(february)))
                .statusCode(200);

        kinship(young.get(0), february, 0.25);
        kinship(young.get(0), january, 0);
        kinship(young.get(1), february, 0.5461 / 4);
        kinship(young.get(1), january, 0.4539 / 4);
        kinship(young.get(1), young.get(2), SIBLINGS);
    }

    @Test
    void one_male_for_the_whole_litter_is_a_claim_of_its_own_and_makes_littermates_full_siblings() {
        var dam = colony.female(WREN);
        var january = colony.male(WREN);
        var february = colony.male(WREN);
        introduce(colony, dam, january, "2026-01-05", "2026-01-31");
        introduce(colony, dam, february, "2026-02-01", "2026-02-28");
        noted(colony, dam, "ovulation", "2026-02-24");
        var oneForAll = Map.of("kind", "worked-out", "wholeLitter", true);
        List<String> young = colony.post(WREN, "/litters", with(litter(dam, "2026-06-29", 2), "sire", oneForAll))
                .statusCode(201)
                .body("young.sire.wholeLitter", everyItem(equalTo(true)))
                .body("warnings.message[0]", containsString("one of them sired all young"))
                .extract()
                .path("young.number");

        kinship(young.get(0), february, 0.5461 / 4);
        kinship(young.get(0), young.get(1), 0.25);
    }

    private static void kinship(String one, String other, double expected) {
        colony.get(WREN, "/animals/" + one + "/kinship/" + other)
                .statusCode(200)
                .body("kinship", closeTo(expected));
    }

    @Test
    void nothing_on_record_leaves_the_sire_unknown_with_a_word_on_it() {
        colony.post(WREN, "/litters", with(litter(colony.female(WREN), "2026-06-29", 4), "sire", workedOut()))
                .statusCode(201)
                .body("litter.sire.kind", equalTo("unknown"))
                .body("warnings[0].level", equalTo("notice"))
                .body("warnings[0].message", containsString("No male is on record"));
    }

    @Test
    void only_a_litters_sire_is_worked_out() {
        var animal = Colony.animal("female", "2024-06-01");
        animal.put("sire", workedOut());
        colony.post(WREN, "/animals", animal)
                .statusCode(422)
                .body("type", equalTo("/problems/contradictory-parentage"));
    }

    @Test
    void a_probability_that_is_as_good_as_nothing_is_refused() {
        var sire = Map.of(
                "kind",
                "candidates",
                "candidates",
                List.of(
                        Map.of("animal", colony.male(WREN), "probability", 0.5),
                        Map.of("animal", colony.male(WREN), "probability", 0.000000001)));
        colony.post(WREN, "/litters", with(litter(colony.female(WREN), "2026-06-29", 4), "sire", sire))
                .statusCode(422)
                .body("type", equalTo("/problems/contradictory-parentage"))
                .body("detail", containsString("as good as 0"));
    }

    private static Matcher<Float> closeTo(double expected) {
        return allOf(greaterThan((float) (expected - 1e-7)), lessThan((float) (expected + 1e-7)));
    }
}
