package org.demebook.programme;

import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;

/** One of everything that may come of a season's plan: two plans, answers of both sides, an agreement, and one taken back. */
public final class ProgrammeStory {
    private ProgrammeStory() {}

    public static void tell(Colony colony) {
        for (var keeper : List.of(WREN, INES)) {
            colony.share(keeper, "open-pedigree");
        }
        var seasons = Seasons.of(colony);
        var first = issued(seasons, colony.female(WREN), colony.male(INES), Map.of("littersAtMost", 1));
        var litter = onlyLitter(colony, first);
        answer(colony, WREN, first, litter, "accept", null, "she has bred twice");
        answer(colony, INES, first, litter, "accept", null, null);
        answer(colony, INES, first, litter, "later", "rests", "he is thin");
        answer(colony, INES, first, litter, "decline", "no-reason", " ");
        var second =
                issued(seasons, colony.female(INES), colony.male(WREN), Map.of("littersAtMost", 1, "follows", first));
        var other = onlyLitter(colony, second);
        answer(colony, INES, second, other, "accept", null, null);
        answer(colony, WREN, second, other, "accept", null, null);
    }

    private static String issued(Seasons seasons, String dam, String sire, Map<String, Object> more) {
        var asked = new HashMap<String, Object>(more);
        asked.put("pairOn", LocalDate.now(ZoneOffset.UTC).plusMonths(6).toString());
        asked.put("together", List.of(Map.of("dam", dam, "sire", sire)));
        return seasons.issued(asked);
    }

    /** Its id. */
    public static String onlyLitter(Colony colony, String plan) {
        return colony.get(WREN, "/season-plans/" + plan)
                .statusCode(200)
                .extract()
                .path("litters[0].id");
    }

    /** @param reason null for none; note likewise */
    public static void answer(
            Colony colony, String keeper, String plan, String litter, String answer, String reason, String note) {
        var body = new HashMap<String, Object>(Map.of("answer", answer));
        if (reason != null) {
            body.put("reason", reason);
        }
        if (note != null) {
            body.put("note", note);
        }
        as(keeper)
                .body(body)
                .put(colony.path("/season-plans/" + plan + "/litters/" + litter + "/answer"))
                .then()
                .statusCode(200);
    }
}
