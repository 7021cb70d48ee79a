package org.demebook.registry;

import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What the register knows of animals that were named in bulk.
 *
 * @param byNumber by studbook number
 * @param numberOf the asker's own references, and the numbers of the animals that they mean
 * @param carriers every transponder code of the population, and the living animal that carries it; empty when
 *     they were not wanted
 */
public record KnownAnimals(
        Map<String, KnownAnimal> byNumber, Map<OwnReference, String> numberOf, Map<String, Carrier> carriers) {

    /** An animal as the asker may see it, and as the rules look at it. */
    public record KnownAnimal(AnimalView view, Kin kin) {}

    /**
     * A living animal that carries a transponder.
     *
     * @param number null where the asker may not see it
     */
    public record Carrier(@Nullable String number) {}

    /** What an animal is called in one collection. */
    public record OwnReference(UUID collectionId, String reference) {}

    public Optional<KnownAnimal> numbered(@Nullable String number) {
        return Optional.ofNullable(number).map(byNumber::get);
    }

    public Optional<KnownAnimal> called(OwnReference reference) {
        return numbered(numberOf.get(reference));
    }
}
