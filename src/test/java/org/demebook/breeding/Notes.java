package org.demebook.breeding;

import io.restassured.response.ValidatableResponse;
import java.util.HashMap;
import java.util.Map;
import org.demebook.Colony;

/** Introductions and breeding signs as they are sent; the test says what its rule is about. */
final class Notes {
    private Notes() {}

    static Map<String, Object> introduction(String female, String male, String fromOn, String untilOn) {
        var introduction = new HashMap<String, Object>();
        introduction.put("female", female);
        introduction.put("male", male);
        introduction.put("fromOn", fromOn);
        if (untilOn != null) {
            introduction.put("untilOn", untilOn);
        }
        return introduction;
    }

    static String introduce(Colony colony, String keeper, String female, String male, String fromOn, String untilOn) {
        return colony.post(keeper, "/introductions", introduction(female, male, fromOn, untilOn))
                .statusCode(201)
                .extract()
                .path("introduction.id");
    }

    static Map<String, Object> sign(String kind, String happenedOn) {
        return sign(kind, happenedOn, Map.of());
    }

    static Map<String, Object> sign(String kind, String happenedOn, Map<String, Object> more) {
        var sign = new HashMap<String, Object>(more);
        sign.put("kind", kind);
        sign.put("happenedOn", happenedOn);
        return sign;
    }

    static ValidatableResponse note(Colony colony, String keeper, String female, Map<String, Object> sign) {
        return colony.post(keeper, "/animals/" + female + "/breeding-signs", sign);
    }

    static String noted(Colony colony, String keeper, String female, Map<String, Object> sign) {
        return note(colony, keeper, female, sign).statusCode(201).extract().path("sign.id");
    }

    /** A litter of one live-born young. */
    static Map<String, Object> litter(String dam, String born) {
        return Map.of("dam", dam, "born", born, "liveBorn", 1, "stillborn", 0, "unfertilised", 0, "ovaFound", 1);
    }
}
