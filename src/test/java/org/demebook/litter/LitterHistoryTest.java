package org.demebook.litter;

import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.litter.NewLitters.litter;
import static org.demebook.litter.NewLitters.outcome;
import static org.demebook.litter.NewLitters.with;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.photo.CameraPhoto;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What was known of a litter when, and how it looked. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class LitterHistoryTest {
    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    // 14 = 11 live (1 malformed) + 1 stillborn + 2 slugs; on 1 July one has died and one more is found
    @Test
    void the_first_count_stays_readable_and_a_death_of_the_next_day_is_a_death() {
        var born = with(litter(colony.female(WREN), "2026-06-29", 11, 1, 2), "malformedLive", 1);
        var registered = colony.post(WREN, "/litters", born).statusCode(201);
        String id = registered.extract().path("litter.id");
        String died = registered.extract().path("young[3].number");

        colony.put(WREN, died, "/death", Map.of("on", "2026-07-01")).statusCode(200);
        correct(id, with(outcome(12, 1, 2), "malformedLive", 1)).statusCode(200);

        colony.get(WREN, "/litters/" + id)
                .body("liveBorn", equalTo(12))
                .body("stillborn", equalTo(1))
                .body("ovaFound", equalTo(15))
                .body("young", hasSize(12));
        colony.get(WREN, "/animals/" + died).body("alive", equalTo(false)).body("held.died", equalTo("2026-07-01"));
        colony.get(WREN, "/litters/" + id + "/versions")
                .statusCode(200)
                .body("outcome.ovaFound", contains(14, 15))
                .body("outcome.liveBorn", contains(11, 12))
                .body("by", contains(WREN, WREN));
    }

    @Test
    void classes_are_told_apart_in_every_version() {
        var first = with(with(litter(colony.female(WREN), "2026-06-29", 5, 1, 4), "partDeveloped", 2), "ovaFound", 12);
        String id = colony.post(WREN, "/litters", with(first, "earlyDead", 1))
                .statusCode(201)
                .body("litter.partDeveloped", equalTo(2))
                .body("litter.earlyDead", equalTo(1))
                .body("litter.infertile", equalTo(0))
                .extract()
                .path("litter.id");
        correct(id, with(with(with(outcome(5, 1, 4), "partDeveloped", 2), "infertile", 3), "ovaFound", 12))
                .statusCode(200);
        colony.get(WREN, "/litters/" + id + "/versions")
                .body("outcome.earlyDead", contains(1, 0))
                .body("outcome.infertile", contains(0, 3))
                .body("outcome.partDeveloped", contains(2, 2));
    }

    @Test
    void who_holds_the_dam_later_reads_the_history_without_names() {
        var dam = colony.female(WREN);
        String id = colony.post(WREN, "/litters", litter(dam, "2026-06-29", 4))
                .extract()
                .path("litter.id");
        colony.get(INES, "/litters/" + id + "/versions")
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-litter"));
        String transfer = colony.post(WREN, "/transfers", Map.of("animal", dam, "kind", "sale", "to", INES))
                .extract()
                .path("transfer.id");
        colony.post(INES, "/transfers/" + transfer + "/acceptance", Map.of()).statusCode(200);
        colony.get(INES, "/litters/" + id + "/versions")
                .statusCode(200)
                .body("", hasSize(1))
                .body("[0].by", nullValue());
    }

    // ── photographs ──────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_litter_is_photographed_before_and_after_separation_and_seen_by_who_sees_the_litter() {
        String id = colony.post(WREN, "/litters", litter(colony.female(WREN), "2026-06-29", 4))
                .extract()
                .path("litter.id");
        for (var moment : List.of("before-separation", "after-separation")) {
            photograph(WREN, id, "?moment=" + moment + "&takenOn=2026-06-29")
                    .statusCode(201)
                    .body("moment", equalTo(moment));
        }
        String photo = colony.get(WREN, "/litters/" + id + "/photos")
                .statusCode(200)
                .body("moment", contains("before-separation", "after-separation"))
                .extract()
                .path("[0].id");

        colony.get(WREN, "/litters/" + id + "/photos/" + photo).statusCode(200).contentType("image/jpeg");
        colony.get(INES, "/litters/" + id + "/photos/" + photo)
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-litter"));
        photograph(INES, id, "?moment=after-separation")
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-litter"));
        photograph(WREN, id, "").statusCode(422).body("type", equalTo("/problems/invalid-values"));
    }

    @Test
    void a_photograph_of_one_litter_is_none_of_another() {
        String id = colony.post(WREN, "/litters", litter(colony.female(WREN), "2026-06-29", 4))
                .extract()
                .path("litter.id");
        String other = colony.post(WREN, "/litters", litter(colony.female(WREN), "2026-06-29", 4))
                .extract()
                .path("litter.id");
        String photo =
                photograph(WREN, id, "?moment=before-separation").extract().path("id");
        colony.get(WREN, "/litters/" + other + "/photos/" + photo)
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-photo"));
    }

    private static io.restassured.response.ValidatableResponse photograph(String keeper, String litter, String how) {
        return as(keeper)
                .contentType("image/jpeg")
                .body(CameraPhoto.withNotes(CameraPhoto.plainJpeg(160, 80), 6))
                .post(colony.path("/litters/" + litter + "/photos" + how))
                .then();
    }

    private static io.restassured.response.ValidatableResponse correct(String id, Map<String, Object> outcome) {
        var etag = colony.get(WREN, "/litters/" + id).extract().header("ETag");
        return as(WREN).header("If-Match", etag)
                .body(outcome)
                .put(colony.path("/litters/" + id + "/outcome"))
                .then();
    }
}
