package org.demebook.telling;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Statement.AncestryTold;
import org.demebook.protocol.Statement.SireShare;

/**
 * Ancestors that came with an animal, in the record that was handed over with it (docs/federation/hand-over.md): for those of which
 * nothing else is told. One with a number may be read, one without be computed with. What is in no form that is known is passed over.
 */
final class Handed {
    private static final int WHOLE = 1_000_000;
    private static final int FIRST_YEAR = 1800;
    private static final int LAST_YEAR = 2200;

    private Handed() {}

    /** Adds those of a record that are not told of yet, and the animal itself where its parents may not be read by what else is told. */
    static void addTo(Map<AnimalId, AncestryTold> ancestry, ObjectNode record) {
        boolean itself = true; // the first is the animal, whose number its record here has
        for (var item : record.path("forebears")) {
            var told = told(item, itself || item.hasNonNull("number"));
            if (itself) {
                told.filter(first -> !ancestry.containsKey(first.animal())
                                || !new ToldDetail(ancestry.get(first.animal()))
                                        .granted()
                                        .readsParents())
                        .ifPresent(first -> ancestry.put(first.animal(), first));
                itself = false;
            }
            told.ifPresent(one -> ancestry.putIfAbsent(one.animal(), one));
        }
    }

    private static Optional<AncestryTold> told(JsonNode item, boolean read) {
        return animal(item.get("animal")).map(id -> {
            var sires = sires(item.path("sires"));
            return new AncestryTold(
                    id,
                    born(item.get("born")),
                    animal(item.get("dam")),
                    sires,
                    item.has("founder"),
                    detail(item, read));
        });
    }

    private static ObjectNode detail(JsonNode item, boolean read) {
        var detail = JsonNodeFactory.instance.objectNode();
        if (read) {
            detail.set("granted", Granted.READ.json());
        }
        if (item.path("number").isTextual()) {
            detail.put("number", item.path("number").textValue());
        }
        return detail;
    }

    private static Optional<AnimalId> animal(JsonNode json) {
        try {
            return json != null && json.isTextual() ? Optional.of(AnimalId.parse(json.textValue())) : Optional.empty();
        } catch (IllegalArgumentException notOne) {
            return Optional.empty();
        }
    }

    private static Optional<String> born(JsonNode year) {
        return year != null && year.isInt() && year.intValue() >= FIRST_YEAR && year.intValue() <= LAST_YEAR
                ? Optional.of(year.asText())
                : Optional.empty();
    }

    /** None where they are more than one of them. */
    private static List<SireShare> sires(JsonNode json) {
        var sires = new ArrayList<SireShare>();
        long all = 0;
        for (var item : json) {
            var sire = animal(item.get("sire"));
            long share = item.path("share").asLong();
            if (sire.isPresent() && share > 0 && share <= WHOLE) {
                sires.add(new SireShare(sire.get(), (int) share));
                all += share;
            }
        }
        return all <= WHOLE && sires.stream().map(SireShare::sire).distinct().count() == sires.size()
                ? sires
                : List.of();
    }
}
