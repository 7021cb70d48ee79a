package org.demebook.consent;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import org.demebook.keeper.Role;
import org.jspecify.annotations.Nullable;

/** Collections, keepers, animals and grants as chance has them: the same for the same seed. */
final class RandomWorld {
    static final Instant NOW = Instant.parse("2026-11-28T09:00:00Z");

    final UUID population;
    final List<UUID> collections = new ArrayList<>();
    final List<UUID> keepers = new ArrayList<>();
    final List<Held> animals = new ArrayList<>();
    final Random random;

    /** An animal, and the two collections that have a say in it. */
    record Held(UUID id, @Nullable UUID holder, @Nullable UUID owner) {
        Subject subject() {
            var parties = new HashSet<>(Arrays.asList(holder, owner));
            parties.remove(null);
            return new Subject(id, parties);
        }
    }

    RandomWorld(long seed, UUID population) {
        this.random = new Random(seed);
        this.population = population;
        for (int i = 0; i < 6; i++) {
            collections.add(id());
        }
        for (int i = 0; i < 4; i++) {
            keepers.add(id());
        }
        for (int i = 0; i < 40; i++) {
            var owner = random.nextInt(12) == 0 ? null : one(collections);
            var holder = random.nextInt(6) == 0 ? null : random.nextInt(3) == 0 ? one(collections) : owner;
            animals.add(new Held(id(), holder, owner));
        }
    }

    UUID id() {
        return new UUID(random.nextLong(), random.nextLong());
    }

    <T> T one(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    Audience audience() {
        var own = new HashSet<UUID>();
        while (random.nextInt(3) == 0) {
            own.add(one(collections));
        }
        return switch (random.nextInt(6)) {
            case 0 -> Audience.PUBLIC(population);
            case 1 -> Audience.node(population, random.nextBoolean() ? "H" : "K");
            case 2 -> new Audience(population, one(keepers), Role.COORDINATOR, own);
            case 3 -> new Audience(population, one(keepers), null, Set.of());
            default -> new Audience(population, one(keepers), Role.MEMBER, own);
        };
    }

    List<Grant> grants(int most) {
        var grants = new ArrayList<Grant>();
        for (int i = random.nextInt(most + 1); i > 0; i--) {
            grants.add(grant());
        }
        return grants;
    }

    private Grant grant() {
        var from = NOW.plus(Duration.ofDays(random.nextInt(5) == 0 ? random.nextInt(3) : -random.nextInt(60)));
        return new Grant(
                id(),
                one(collections),
                one(keepers),
                recipient(),
                random.nextBoolean() ? Scope.WHOLE_COLLECTION : Scope.animals(someAnimals()),
                some(FieldGroup.class),
                some(Purpose.class),
                some(Action.class),
                from,
                from.plus(Duration.ofDays(1 + random.nextInt(90))),
                null,
                "1",
                random.nextInt(6) == 0 ? NOW.plus(Duration.ofDays(random.nextInt(3) - 1)) : null,
                random.nextInt(6) == 0 ? NOW.plus(Duration.ofDays(random.nextInt(3) - 1)) : null);
    }

    private Recipient recipient() {
        return switch (random.nextInt(5)) {
            case 0 -> Recipient.keeper(one(keepers));
            case 1 -> Recipient.MEMBERS;
            case 2 -> Recipient.COORDINATORS;
            case 3 -> Recipient.PUBLIC;
            default -> Recipient.node(random.nextBoolean() ? "H" : "K");
        };
    }

    private Set<UUID> someAnimals() {
        var some = new HashSet<UUID>();
        animals.stream().filter(animal -> random.nextInt(3) > 0).forEach(animal -> some.add(animal.id()));
        some.add(animals.get(0).id());
        return some;
    }

    private <E extends Enum<E>> Set<E> some(Class<E> type) {
        var some = EnumSet.allOf(type);
        some.removeIf(value -> random.nextInt(4) == 0);
        some.add(type.getEnumConstants()[random.nextInt(type.getEnumConstants().length)]);
        return some;
    }
}
