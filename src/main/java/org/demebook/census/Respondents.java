package org.demebook.census;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.disclosure.Plan;
import org.demebook.disclosure.Tally;
import org.demebook.disclosure.Tally.Counted;

/** Whom published counts protect: households, as they are today, and those of them who do without. */
final class Respondents {
    private final Map<UUID, UUID> households;
    private final Set<String> waivers;

    /**
     * @param households by collection
     * @param keepers by collection
     * @param waivers keepers
     */
    Respondents(Map<UUID, UUID> households, Map<UUID, Set<UUID>> keepers, Set<UUID> waivers) {
        this.households = households;
        Map<String, Set<UUID>> members = new HashMap<>();
        keepers.forEach((collection, of) -> members.computeIfAbsent(household(collection), one -> new HashSet<>())
                .addAll(of));
        this.waivers = members.keySet().stream()
                .filter(household -> waivers.containsAll(members.get(household)))
                .collect(Collectors.toSet());
    }

    /** A collection that nobody keeps any more is a household of its own. */
    String household(UUID collection) {
        return households.getOrDefault(collection, collection).toString();
    }

    Tally tally(Plan plan, Collection<CountedAnimal> animals) {
        boolean byRegion = plan.divisions().size() > 1;
        var units = animals.stream()
                .map(animal -> new Counted(
                        animal.number(),
                        byRegion
                                ? List.of(animal.baseCell(), Heading.baseCell(animal.place()))
                                : List.of(animal.baseCell()),
                        household(animal.holder()),
                        household(animal.owner())))
                .toList();
        return new Tally(plan, units, waivers);
    }
}
