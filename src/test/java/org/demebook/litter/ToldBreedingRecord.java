package org.demebook.litter;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.demebook.keeper.Standing;
import org.demebook.notation.RoughDate;
import org.demebook.registry.Breach;
import org.demebook.registry.Custody;

/** Knows what a test tells it of a dam, and nothing of any other. */
@ApplicationScoped
public class ToldBreedingRecord implements BreedingRecord {
    private final Map<UUID, List<Mate>> mates = new ConcurrentHashMap<>();
    private final Map<UUID, Integer> daysFromShed = new ConcurrentHashMap<>();

    public void met(UUID damId, Mate... males) {
        mates.put(damId, List.of(males));
    }

    public void shed(UUID damId, int daysBeforeBirth) {
        daysFromShed.put(damId, daysBeforeBirth);
    }

    @Override
    public List<Mate> mates(UUID populationId, UUID damId, RoughDate born) {
        return mates.getOrDefault(damId, List.of());
    }

    @Override
    public List<Breach> check(Standing by, Custody dam, RoughDate born) {
        return List.of();
    }

    @Override
    public OptionalInt daysFromShed(UUID populationId, UUID damId, RoughDate born) {
        return daysFromShed.containsKey(damId) ? OptionalInt.of(daysFromShed.get(damId)) : OptionalInt.empty();
    }
}
