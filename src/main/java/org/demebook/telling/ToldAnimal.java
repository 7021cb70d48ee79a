package org.demebook.telling;

import java.util.List;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.notation.StudbookNumber;
import org.jspecify.annotations.Nullable;

/**
 * What other nodes told of one animal, as far as members of this node may read it.
 *
 * @param number absent where it was not told, or is none
 * @param born as it is known; absent where it is unknown, or was not told
 * @param founder taken from the wild
 * @param alive false where its death was told
 * @param dam studbook number; absent where it was not told
 * @param sires one, or those that come into question
 */
public record ToldAnimal(
        @Nullable StudbookNumber number,
        Sex sex,
        @Nullable RoughDate born,
        boolean founder,
        boolean alive,
        @Nullable StudbookNumber dam,
        List<ToldSire> sires) {
    /** Of an animal of which nothing may be read. */
    static final ToldAnimal NOTHING = new ToldAnimal(null, Sex.UNKNOWN, null, false, true, null, List.of());

    /** @param millionths with which probability it is the sire */
    public record ToldSire(StudbookNumber number, int millionths) {}
}
