package org.demebook.protocol.simulation;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.UUID;

/** The one source of everything that is left to chance in a simulated world. */
final class Dice {
    private final SplittableRandom random;

    Dice(long seed) {
        this(new SplittableRandom(seed));
    }

    private Dice(SplittableRandom random) {
        this.random = random;
    }

    /** Further dice, which follow from these; what they show does not depend on how often these are thrown later. */
    Dice further() {
        return new Dice(random.split());
    }

    /** @param probability in [0, 1] */
    boolean happens(double probability) {
        return random.nextDouble() < probability;
    }

    int below(int bound) {
        return random.nextInt(bound);
    }

    long between(long least, long most) {
        return random.nextLong(least, most + 1);
    }

    double between(double least, double most) {
        return least + random.nextDouble() * (most - least);
    }

    <T> T oneOf(List<T> choices) {
        return choices.get(random.nextInt(choices.size()));
    }

    <T> Optional<T> anyOf(Collection<T> choices) {
        return choices.isEmpty() ? Optional.empty() : Optional.of(oneOf(List.copyOf(choices)));
    }

    /** Each of them or not. */
    Set<String> someOf(Collection<String> choices) {
        var some = new TreeSet<String>();
        for (var choice : choices) {
            if (happens(0.5)) {
                some.add(choice);
            }
        }
        return some;
    }

    byte[] bytes(int count) {
        byte[] bytes = new byte[count];
        random.nextBytes(bytes);
        return bytes;
    }

    /** Of the form of version 7 (RFC 9562), its time random too. */
    UUID id() {
        return new UUID(random.nextLong() & ~0xf000L | 0x7000L, random.nextLong() & ~(0xc0L << 56) | (0x80L << 56));
    }
}
