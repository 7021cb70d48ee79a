package org.demebook.programme;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Map;
import org.demebook.Marrowfin;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Fractions are those of the worked pedigree, computed in exact rational arithmetic apart from this code. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class SeasonPlanTest {
    private static final LocalDate PAIR_ON = LocalDate.now(ZoneOffset.UTC).plusMonths(6);

    static Marrowfin marrowfin;

    @BeforeAll
    static void settle() {
        marrowfin = Marrowfin.settled();
    }

    @Test
    void the_best_single_litter_is_that_of_the_unused_founder() {
        // one young of 013 × 006, certain to come: .85625 (worked pedigree)
        var season = Seasons.of(marrowfin.colony);
        season.draft(Map.of("pairOn", PAIR_ON, "litters", 1, "youngKept", 1, "chanceOfLitter", 1))
                .body("state", equalTo("ready"))
                .body("imagined", equalTo(false))
                .body("progress", nullValue())
                .body("plan.litters", hasSize(1))
                .body("plan.litters[0].dam", equalTo(marrowfin.number(13)))
                .body("plan.litters[0].sire", equalTo(marrowfin.number(6)))
                .body("plan.litters[0].keep", equalTo(3))
                .body("plan.litters[0].state", equalTo("open"))
                .body("plan.litters[0].reason", containsString("As far as is known they are unrelated"))
                .body("plan.litters[0].ifRefused.thisPair", greaterThanOrEqualTo(0f))
                .body("plan.summary", containsString("1 litter: gene diversity 0.8503 → 0.8563"))
                .body("plan.curve", not(empty()));
    }
}
