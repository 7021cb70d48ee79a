package org.demebook.web.figures;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.Test;

/** A population in figures: those of what the one who looks may see or have computed with. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class FiguresPageTest {
    @Test
    void figures_founders_and_years_are_those_that_follow_from_the_register() {
        var colony = Colony.found();
        var founder = animal("female", "2015-06-01");
        founder.put("origin", "wild-caught");
        var dam = colony.register(WREN, founder);
        founder.put("sex", "male");
        var sire = colony.register(WREN, founder);
        colony.young(WREN, "female", "2024-06-01", dam, sire);
        figures(colony, INES)
                .statusCode(200)
                // three of them, ½ with itself, ¼ of parent and young: 1 − (3·½ + 4·¼)/9
                .body(containsString("0.7222"))
                .body(containsString("/populations/" + colony.code + "/animals/" + dam))
                .body(containsString("dams: 1, sires: 1, in one generation"))
                .body(containsString(">2015<"))
                .body(containsString("id=\"gene-diversity\""));
    }

    @Test
    void an_animal_that_is_only_computed_with_is_in_no_picture() {
        var colony = Colony.foundPrivate();
        colony.share(INES, "compute-only");
        var hidden = colony.register(INES, animal("female", "1999-06-01"));
        colony.register(WREN, animal("male", "2020-06-01"));
        figures(colony, WREN)
                .statusCode(200)
                .body(containsString("1 of the living animals count"))
                .body(not(containsString(hidden)))
                .body(not(containsString(">1999<")))
                .body(containsString(">2020<"));
        figures(colony, INES).body(containsString(">1999<"));
    }

    @Test
    void where_nothing_is_shown_it_says_what_to_do() {
        var colony = Colony.foundPrivate();
        colony.female(WREN);
        figures(colony, DOV)
                .statusCode(200)
                .body(containsString("class=\"empty\""))
                .body(containsString("/populations/" + colony.code + "/animals"));
    }

    private static ValidatableResponse figures(Colony colony, String keeper) {
        return Browsing.as(keeper)
                .get("/populations/" + colony.code + "/figures")
                .then();
    }
}
