package org.demebook.consent;

import static org.assertj.core.api.Assertions.fail;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.consent.Things.KESTREL;
import static org.demebook.consent.Things.PIP;
import static org.demebook.consent.Things.none;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.jspecify.annotations.Nullable;

/**
 * How each operation of the contract is asked about something of the asker's own, something that is granted to them, something
 * of another's that is hidden, and something that does not exist: the thing is made, and the body that goes with it.
 */
final class Questions {
    /** What the asker has to do with the thing that they ask about. */
    enum Relation {
        OWN,
        GRANTED,
        FOREIGN,
        ABSENT
    }

    private final Things things = new Things();
    private final Things layers = layers();
    private final Seekers seekers = new Seekers();
    private final Planned planned = new Planned();
    private final String elsewhere = elsewhere();
    private @Nullable String counted;

    private Colony colony() {
        return things.colony;
    }

    /** The populations in which most things are made. */
    List<String> codes() {
        return List.of(things.colony.code, layers.colony.code, seekers.things.colony.code, planned.colony.code);
    }

    /** The same keepers with snakes that lay eggs. */
    private static Things layers() {
        var things = new Things();
        var colony = things.colony;
        as(WREN).header("If-Match", as(WREN).get(colony.path("")).header("ETag"))
                .body(population(colony.code, "egg-laying"))
                .put(colony.path(""))
                .then()
                .statusCode(200);
        return things;
    }

    private static String elsewhere() {
        var code = "E" + Long.toString(System.nanoTime() % 1_679_616, 36).toUpperCase();
        as(KESTREL)
                .body(population(code, "live-bearing"))
                .post("/api/v1/populations")
                .then()
                .statusCode(201);
        return code;
    }

    static Map<String, Object> population(String code, String birthMode) {
        return Map.of(
                "code", code,
                "name", "Marrowfin Cay",
                "taxon", "insular dwarf Boa",
                "locality", "Marrowfin Cay",
                "birthMode", birthMode);
    }

    /** A fresh thing, and the question about it. */
    Question about(Operation operation, String asker, Relation relation) {
        var owner =
                switch (relation) {
                    case OWN -> asker;
                    case GRANTED -> PIP;
                    case FOREIGN -> DOV;
                    case ABSENT -> null;
                };
        var named = new HashMap<String, String>();
        named.put("population", population(operation, asker, relation));
        if (owner == null) {
            absent(operation, named);
        } else {
            new Existing(where(operation), seekers, planned, asker, owner, relation).of(operation, named);
        }
        var address = operation.path();
        for (var parameter : operation.parameters()) {
            var value = named.get(parameter);
            if (value == null) {
                fail("say here what {%s} of %s is", parameter, operation.name());
            }
            address = address.replace("{" + parameter + "}", value);
        }
        var about = new ArrayList<String>();
        for (var name : List.of(
                "number",
                "other",
                "id",
                "record",
                "silence",
                "key",
                "collection",
                "dispute",
                "grant",
                "sheet",
                "litter",
                "photo",
                "claim",
                "transfer",
                "crossing",
                "approach",
                "draft",
                "plan",
                "animal",
                "task",
                "twin",
                "secondTwin",
                "claimCode")) {
            if (named.containsKey(name)) {
                about.add(named.get(name));
            }
        }
        return Bodies.question(operation, address, about, named, asker, where(operation));
    }

    /** Where things of this sort are made. */
    private Things where(Operation operation) {
        if (operation.path().contains("ncubation")) {
            return layers;
        }
        if (operation.path().contains("/season-")) {
            return planned.things;
        }
        return operation.path().contains("/approaches") || operation.path().endsWith("/unnamed-partners")
                ? seekers.things
                : things;
    }

    private String population(Operation operation, String asker, Relation relation) {
        if (operation.path().contains("/count-releases/")) {
            return counted();
        }
        if (operation.isAboutAThing()) {
            return where(operation).colony.code;
        }
        return switch (relation) {
            case OWN -> where(operation).colony.code;
            case FOREIGN, GRANTED -> asker.equals("administrator") ? colony().code : elsewhere;
            case ABSENT -> "ZZZ";
        };
    }

    /** A population whose counts were released today. */
    private String counted() {
        if (counted == null) {
            var colony = Colony.foundPrivate();
            Things.fixRegions(colony);
            for (var keeper : new String[] {WREN, Colony.INES, DOV}) {
                Things.stateRegion(colony, keeper);
                as(keeper)
                        .body(Map.of("waived", true))
                        .put(colony.path("/count-waiver"))
                        .then()
                        .statusCode(200);
                colony.female(keeper);
                colony.male(keeper);
                colony.share(keeper, "compute-only");
            }
            colony.post(WREN, "/count-releases", Map.of()).statusCode(201);
            counted = colony.code;
        }
        return counted;
    }

    private void absent(Operation operation, Map<String, String> named) {
        var here = where(operation);
        for (var parameter : operation.parameters()) {
            switch (parameter) {
                case "population" -> {}
                case "number", "other" -> named.put(parameter, here.absentNumber());
                case "countedOn" -> named.put(parameter, "2024-01-01");
                case "kind" -> named.put(parameter, "mark");
                case "value" -> named.put(parameter, Things.MARK);
                case "type", "name" -> named.put(parameter, "nothing-of-this-name");
                case "code" -> named.put(parameter, "0000-0000-0000-0000");
                case "key" -> named.put(parameter, "own:" + none() + ":0");
                // a litter that is not there, of a plan that is
                case "plan" -> named.put(parameter, operation.id().equals("answerProposal") ? planned.plan : none());
                case "secret" -> named.put(parameter, "a".repeat(43));
                default -> named.put(parameter, none());
            }
        }
        // what only the body names
        for (var name : new String[] {"animal", "twin", "secondTwin"}) {
            named.put(name, here.absentNumber());
        }
        named.put("task", "own:" + none() + ":0");
        named.put("draft", none());
        named.put("secret", "a".repeat(43));
        named.put("claimCode", "0000-0000-0000-0000");
    }

    static String today() {
        return LocalDate.now(ZoneOffset.UTC).toString();
    }
}
