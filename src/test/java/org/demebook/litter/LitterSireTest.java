package org.demebook.litter;

import static org.demebook.Backstage.ask;
import static org.demebook.Colony.WREN;
import static org.demebook.litter.NewLitters.known;
import static org.demebook.litter.NewLitters.litter;
import static org.demebook.litter.NewLitters.with;
import static org.demebook.litter.NewLitters.workedOut;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasSize;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.gestation.Grade;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The sire of a litter as the males that its dam met tell it. Scenarios of the trade, common practice, no source. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class LitterSireTest {
    static Colony colony;

    @Inject
    ToldBreedingRecord record;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    // 013 was with 014 from 2026-01-05 to 2026-02-20 and shed on 2026-03-14, 107 days before the birth
    @Test
    void a_litter_is_registered_with_the_only_male_and_the_days_from_the_shed() {
        var dam = colony.female(WREN);
        var male = colony.male(WREN);
        record.met(id(dam), mate(male, "2026-02-20", -2, Grade.IN_TIME, "1"));
        record.shed(id(dam), 107);
        var litter = with(with(litter(dam, "2026-06-29", 11, 1, 2), "malformedLive", 1), "sire", workedOut());

        colony.post(WREN, "/litters", litter)
                .statusCode(201)
                .body("daysFromShed", equalTo(107))
                .body("litter.ovaFound", equalTo(14))
                .body("litter.sire", equalTo(Map.of("kind", "known", "animal", male)))
                .body("young", hasSize(11))
                .body("young.sire.animal", everyItem(equalTo(male)))
                .body("warnings.field", contains("sire.kind"));
    }

    /** Scenario A9. */
    @Test
    void a_test_fixes_one_neonate_of_two_possible_sires_without_touching_the_rest() {
        var dam = colony.female(WREN);
        var january = colony.male(WREN);
        var february = colony.male(WREN);
        record.met(
                id(dam),
                mate(february, "2026-02-20", -2, Grade.IN_TIME, "0.7"),
                mate(january, "2026-01-20", 37, Grade.STORED_SPERM, "0.3"));
        // nobody says that one male sired them all
        List<String> young = colony.post(WREN, "/litters", with(litter(dam, "2026-06-29", 4), "sire", workedOut()))
                .statusCode(201)
                .body("young[3].sire.candidates.animal", contains(february, january))
                .body("young[3].sire.candidates.probability", contains(0.7f, 0.3f))
                .body("young[3].sire.wholeLitter", equalTo(false))
                .body("warnings.message[0]", containsString("Each young may have another"))
                .extract()
                .path("young.number");
        // half the dam's: ½ · ½; half the sire's: ½ · .7 with one, ½ · .3 with the other
        kinship(young.get(0), february, 0.175);
        // of unrelated parents ¼ with one sire, ⅛ with two: ⅛ + ⅛ · (.7² + .3²)
        kinship(young.get(0), young.get(1), 0.1975);

        colony.put(WREN, young.get(0), "/parentage", Map.of("dam", dam, "sire", known(february)))
                .statusCode(200);

        kinship(young.get(0), february, 0.25);
        kinship(young.get(0), january, 0);
        kinship(young.get(1), february, 0.175);
        kinship(young.get(1), january, 0.075);
        kinship(young.get(1), young.get(2), 0.1975);
    }

    @Test
    void one_male_for_the_whole_litter_is_a_claim_of_its_own_and_makes_littermates_full_siblings() {
        var dam = colony.female(WREN);
        var january = colony.male(WREN);
        var february = colony.male(WREN);
        record.met(
                id(dam),
                mate(february, "2026-02-20", -2, Grade.IN_TIME, "0.7"),
                mate(january, "2026-01-20", 37, Grade.STORED_SPERM, "0.3"));
        var oneForAll = Map.of("kind", "worked-out", "wholeLitter", true);
        List<String> young = colony.post(WREN, "/litters", with(litter(dam, "2026-06-29", 2), "sire", oneForAll))
                .statusCode(201)
                .body("young.sire.wholeLitter", everyItem(equalTo(true)))
                .body("warnings.message[0]", containsString("one of them sired all young"))
                .extract()
                .path("young.number");

        kinship(young.get(0), february, 0.175);
        kinship(young.get(0), young.get(1), 0.25);
    }

    private static void kinship(String one, String other, double expected) {
        colony.get(WREN, "/animals/" + one + "/kinship/" + other)
                .statusCode(200)
                .body("kinship", equalTo((float) expected));
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

    private static UUID id(String number) {
        return UUID.fromString(ask("select id::text from demebook.animal where number = ?", number)
                .get(0));
    }

    private static Mate mate(String male, String lastMetOn, int daysBefore, Grade grade, String share) {
        return new Mate(id(male), LocalDate.parse(lastMetOn), daysBefore, grade, new BigDecimal(share));
    }
}
