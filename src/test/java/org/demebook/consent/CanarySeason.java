package org.demebook.consent;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.consent.CanaryWorld.created;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.programme.Seasons;

/** A plan that wren issues, and what keepers answer: notes are read by who wrote them and by the coordinator. */
final class CanarySeason {
    private final CanaryWorld world;
    private final Colony colony;

    CanarySeason(CanaryWorld world) {
        this.world = world;
        colony = world.colony;
    }

    void write(CanaryStory story) {
        var females = new HashMap<String, String>();
        var males = new HashMap<String, String>();
        for (var keeper : CanaryWorld.KEEPERS) {
            females.put(keeper, story.register(keeper, "female", List.of()));
            males.put(keeper, story.register(keeper, "male", List.of()));
        }
        for (var keeper : List.of(INES, DOV)) {
            world.letCoordinatorsPlan(keeper, List.of(females.get(keeper), males.get(keeper)));
        }
        var seasons = Seasons.of(colony);
        var asked = Map.of(
                "pairOn",
                LocalDate.now().plusMonths(6).toString(),
                "litters",
                2,
                "together",
                List.of(
                        Map.of("dam", females.get(DOV), "sire", males.get(INES)),
                        Map.of("dam", females.get(INES), "sire", males.get(WREN))));
        String draft = seasons.draft(asked).extract().path("id");
        world.thing("draft", draft, WREN);
        String plan = seasons.issue(draft);
        world.thing("plan", plan);
        var between = litter(plan, females.get(DOV));
        world.thing("season-litter", between, DOV, INES);
        answer(DOV, plan, between, "accept", null);
        answer(INES, plan, between, "later", "rests");

        var agreed = litter(plan, females.get(INES));
        world.thing("season-litter", agreed, INES, WREN);
        answer(WREN, plan, agreed, "accept", null);
        answer(INES, plan, agreed, "accept", null);
        // for a year each of the two may know number and whereabouts of the other's animal
        world.know(WREN, females.get(INES), INES);
        world.know(INES, males.get(WREN), WREN);
    }

    private String litter(String plan, String dam) {
        return colony.get(WREN, "/season-plans/" + plan)
                .statusCode(200)
                .extract()
                .path("litters.find { it.dam == '" + dam + "' }.id");
    }

    private void answer(String keeper, String plan, String litter, String answer, String reason) {
        var body = new HashMap<String, Object>(Map.of("answer", answer));
        if (reason != null) {
            body.put("reason", reason);
        }
        body.put("note", world.words.text("own", keeper, CanaryWorld.COORDINATOR));
        created(
                Colony.as(keeper)
                        .body(body)
                        .put(colony.path("/season-plans/" + plan + "/litters/" + litter + "/answer"))
                        .then(),
                "");
    }

    /** What somebody sends to a season's drafts and plans about an animal of somebody else. */
    List<Map<String, Object>> sent(String below, String asker, String foreign, String said) {
        var on = LocalDate.now().plusMonths(6).toString();
        return switch (below) {
            case "/season-drafts" ->
                List.of(
                        Map.of("pairOn", on, "leftOut", List.of(foreign)),
                        Map.of("pairOn", on, "together", List.of(Map.of("dam", foreign, "sire", foreign))),
                        Map.of("pairOn", on, "whatIf", Map.of("lost", List.of(foreign))),
                        Map.of(
                                "pairOn",
                                on,
                                "whatIf",
                                Map.of("capacity", List.of(Map.of("animal", foreign, "litters", 1)))));
            case "/season-plans" ->
                world.ids("draft", asker).stream()
                        .map(draft -> Map.<String, Object>of("draft", draft))
                        .toList();
            default ->
                List.of(
                        Map.of("answer", "accept", "note", said),
                        Map.of("answer", "later", "reason", "rests", "note", said),
                        Map.of("answer", "later", "reason", "too-far", "note", said));
        };
    }
}
