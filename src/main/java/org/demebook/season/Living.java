package org.demebook.season;

/**
 * An animal of the pool that an outlook begins with.
 *
 * @param row of the pedigree
 * @param breedsIn seasons until it may have a litter: 0 for this season, 1 for the next; {@link #NEVER}, also where its
 *     sex is not known
 * @param seasons in how many it is there, this one included, 1 or more: with 1 it leaves before the young of this season count
 */
public record Living(int row, boolean female, int breedsIn, int seasons) {
    public static final int NEVER = Integer.MAX_VALUE;

    public Living {
        if (breedsIn < 0 || seasons < 1) {
            throw new IllegalArgumentException("who lives is there for 1 season or more, not " + seasons
                    + ", and does not breed " + breedsIn + " seasons from now");
        }
    }

    boolean mayBreed() {
        return breedsIn == 0;
    }

    /** It is there when the young of this season count. */
    public boolean stays() {
        return seasons > 1;
    }

    /** A season later. */
    Living next(int waits) {
        int left = breedsIn == NEVER ? NEVER : Math.max(0, breedsIn - 1);
        return new Living(row, female, Math.max(left, waits), seasons - 1);
    }
}
