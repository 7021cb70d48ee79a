package org.demebook.transfer;

import org.demebook.keeper.CollectionView;
import org.demebook.keeper.TokenView;
import org.demebook.registry.AnimalView;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * An animal that was taken over with a claim code.
 *
 * @param population code of its population, which you belong to now
 * @param token the first token of the account that was opened; absent for who was signed in
 */
@ShownTo(ShownTo.Whom.BOTH_SIDES)
public record Claimed(
        String population,
        AnimalView animal,
        CollectionView collection,
        @Nullable TokenView token) {
    @Override
    public String toString() {
        return "Claimed[animal=" + animal.number() + "]"; // no token in a log
    }
}
