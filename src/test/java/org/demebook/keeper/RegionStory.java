package org.demebook.keeper;

import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;

import io.restassured.response.ValidatableResponse;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;

/** Regions are fixed, fixed anew, stated and taken back. */
public final class RegionStory {
    private RegionStory() {}

    public static void tell(Colony colony) {
        fix(colony, "North", "South").statusCode(200);
        fix(colony, "North", "Middle", "South").statusCode(200);
        apart(colony, "North", "South", 420).statusCode(200);
        apart(colony, "South", "Middle", 180).statusCode(200);
        var collection = collection(colony, WREN);
        for (var region : new String[] {"Middle", null, "South"}) {
            state(colony, WREN, collection, region).statusCode(200);
        }
    }

    public static ValidatableResponse fix(Colony colony, String... names) {
        return as(WREN).header("If-Match", as(WREN).get(colony.path("/regions")).header("ETag"))
                .body(Map.of("names", List.of(names)))
                .put(colony.path("/regions"))
                .then();
    }

    /** Nothing else is known of how far apart regions are. */
    public static ValidatableResponse apart(Colony colony, String one, String other, int kilometres) {
        var pair = Map.of("one", one, "other", other, "kilometres", kilometres, "border", kilometres > 200);
        return as(WREN).header(
                        "If-Match",
                        as(WREN).get(colony.path("/regions/distances")).header("ETag"))
                .body(Map.of("pairs", List.of(pair)))
                .put(colony.path("/regions/distances"))
                .then();
    }

    public static ValidatableResponse state(Colony colony, String keeper, String collection, String region) {
        var body = new HashMap<String, Object>();
        if (region != null) {
            body.put("region", region);
        }
        return as(keeper)
                .body(body)
                .put(colony.path("/collections/" + collection + "/region"))
                .then();
    }

    public static String collection(Colony colony, String keeper) {
        return colony.get(keeper, "/collections").extract().path("[0].id");
    }
}
