package org.demebook.protocol.simulation;

/**
 * How bad it is in one world. Probabilities are of each message, or of each time that fate looks in.
 *
 * @param loss of a message
 * @param duplication of a request, and of an answer
 * @param slowestMinutes how long a message may take
 * @param powerCuts how often the power is about to fail
 * @param restores how often a node is restored from an old backup
 * @param cutLinks how often links are cut
 * @param goneForGood whether a node may be lost with its disk
 * @param skewHours how far a clock is off at most
 * @param jumps how often a clock jumps
 * @param secrets whether something is told to some nodes only
 * @param relays whether a journal is asked for at others than its author, too
 * @param expiring whether offers expire within hours of their giver's clock, or beyond the end of the story
 * @param steps how many events until everything heals
 */
record Conditions(
        int nodes,
        double loss,
        double duplication,
        int slowestMinutes,
        double powerCuts,
        double restores,
        double cutLinks,
        boolean goneForGood,
        int skewHours,
        double jumps,
        boolean secrets,
        boolean relays,
        boolean expiring,
        int steps) {
    static Conditions of(Dice dice) {
        int nodes = 3 + dice.below(3);
        return new Conditions(
                nodes,
                dice.happens(0.3) ? 0 : dice.between(0, 0.3),
                dice.happens(0.3) ? 0 : dice.between(0, 0.3),
                dice.happens(0.3) ? 1 : (int) dice.between(1L, 120L),
                dice.happens(0.3) ? 0 : dice.between(0, 0.6),
                dice.happens(0.4) ? 0 : dice.between(0, 0.3),
                dice.happens(0.4) ? 0 : dice.between(0, 0.3),
                nodes > 3 && dice.happens(0.4),
                dice.happens(0.3) ? 0 : 96,
                dice.happens(0.5) ? 0 : dice.between(0, 0.2),
                dice.happens(0.5),
                dice.happens(0.7),
                dice.happens(0.7),
                120 + dice.below(120));
    }

    /** The same where expiry is nobody's decision, so that clocks have nothing to decide. */
    Conditions withClocks(int hoursOff, double howOftenTheyJump) {
        return new Conditions(
                nodes,
                loss,
                duplication,
                slowestMinutes,
                powerCuts,
                restores,
                cutLinks,
                goneForGood,
                hoursOff,
                howOftenTheyJump,
                secrets,
                relays,
                false,
                steps);
    }
}
