package org.demebook.keeper;

import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

/** Joins collections that share a keeper. */
final class Households {
    private final Map<UUID, UUID> next = new HashMap<>();
    private final Map<UUID, UUID> oneOfKeeper = new HashMap<>();

    void add(UUID collectionId, UUID keeperId) {
        next.putIfAbsent(collectionId, collectionId);
        var other = oneOfKeeper.putIfAbsent(keeperId, collectionId);
        if (other != null) {
            next.put(last(collectionId), last(other));
        }
    }

    Map<UUID, UUID> byCollection() {
        return next.keySet().stream().collect(Collectors.toMap(collection -> collection, this::last));
    }

    private UUID last(UUID collectionId) {
        var last = collectionId;
        while (!next.get(last).equals(last)) {
            last = next.get(last);
        }
        return last;
    }
}
