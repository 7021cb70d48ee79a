package org.demebook.season;

/** What holds a plan back. Those of an impossible season are named, so that somebody can give one up. */
public sealed interface Constraint {
    /** So many litters, no fewer. */
    record LittersWanted(int litters) implements Constraint {}

    /** So many litters of one male, no more. */
    record LittersOfMale(int male, int most) implements Constraint {}

    /** So many litters in one collection, no more: young stay with their dam's collection. */
    record LittersOfCollection(int collection, int most) implements Constraint {}

    /** So many males of one collection that travel to a litter elsewhere, no more. */
    record TravellersOfCollection(int collection, int most) implements Constraint {}

    /** The males that a female may have are not all males. */
    record PairsOfFemale(int female) implements Constraint {}

    /** A pair that is settled. */
    record PairLocked(Pair pair) implements Constraint {}

    /** No more litters than so many, settled ones included. */
    record LittersAtMost(int litters) implements Constraint {}
}
