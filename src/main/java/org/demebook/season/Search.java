package org.demebook.season;

import java.util.SplittableRandom;

/**
 * Betters a plan by small changes: another sire for a litter, two litters that swap sires, a litter moved to another dam, two
 * or three at once, and where numbers are free one more or one fewer. First with simulated annealing (Kirkpatrick, Gelatt
 * and Vecchi 1983, from memory), then with every change that helps until none does.
 */
final class Search {
    private static final int LOOK_EVERY = 1 << 14;
    private static final int COOL_EVERY = 1 << 8;
    private static final int SAMPLES = 200;
    private static final double COOLED = 1e-4;
    private static final double HELPS = 1e-15;

    private final Season season;
    private final Roster roster;
    private final Draft draft;
    private final SplittableRandom random;
    private final Watch watch;
    private final double bound;

    private int[] best;
    private double bestObjective;
    private double bestMeanKinship;
    private long done;
    private boolean stopped;

    Search(Season season, int[] start, double weight, double bound, long seed, Watch watch) {
        this.season = season;
        this.bound = bound;
        this.watch = watch;
        roster = new Roster(season, start, weight);
        draft = roster.draft;
        random = new SplittableRandom(seed);
        best = start.clone();
        bestObjective = draft.objective();
        bestMeanKinship = draft.meanKinship();
    }

    /** The best plan found in so many moves, never worse than the start. At heat 1 it roams, at less it stays near. */
    int[] run(long moves, double heat) {
        roam(moves, heat);
        roster.become(best);
        while (!stopped && descend()) {
            keepIfBest();
            look(moves);
        }
        return best;
    }

    /** The same, without trying in the end every change that might help: that costs litters × females × males. */
    int[] roam(long moves, double heat) {
        double first = heat * usualChange();
        double temperature = first;
        for (done = 0; first > 0 && done < moves && !stopped; done++) {
            if (done % COOL_EVERY == 0) {
                // StrictMath: to the last bit the same on every machine
                temperature = first * StrictMath.pow(COOLED, (double) done / moves);
            }
            tryOne(temperature);
            if (done % LOOK_EVERY == LOOK_EVERY - 1) {
                look(moves);
            }
        }
        return best;
    }

    boolean stopped() {
        return stopped;
    }

    private void look(long moves) {
        stopped |= !watch.goOn(new Progress(Math.min(done, moves), moves, bestMeanKinship, bound));
    }

    private double usualChange() {
        double sum = 0;
        int seen = 0;
        for (int sample = 0; sample < SAMPLES; sample++) {
            if (propose()) {
                sum += Math.abs(draft.proposed() - draft.objective());
                seen++;
                roster.undo();
            }
        }
        return seen == 0 ? 0 : sum / seen;
    }

    private void tryOne(double temperature) {
        if (!propose()) {
            return;
        }
        double worse = draft.proposed() - draft.objective();
        if (worse <= 0 || random.nextDouble() < StrictMath.exp(-worse / temperature)) {
            roster.take();
            keepIfBest();
        } else {
            roster.undo();
        }
    }

    private void keepIfBest() {
        if (draft.objective() < bestObjective - HELPS) {
            bestObjective = draft.objective();
            bestMeanKinship = draft.meanKinship();
            best = draft.sires.clone();
        }
    }

    /** Counts a change at random; false, and nothing counted, where it breaks a limit or is none. */
    private boolean propose() {
        roster.begin();
        if (roster.free() == 0 || season.males == 0) {
            return false;
        }
        int kind = random.nextInt(season.least < season.most ? 10 : 8);
        if (kind == 9) {
            roster.more(anyIdle(), anyMale());
        } else if (roster.bred() == 0) {
            return false;
        } else if (kind == 8) {
            roster.less(anyBred());
        } else if (kind == 7) {
            exchange();
        } else if (kind < 3) {
            int female = anyBred();
            roster.less(female).more(female, anyMale());
        } else if (kind < 5) {
            int female = anyBred();
            int other = anyBred();
            int third = kind == 3 ? roster.sire(female) : anyMale();
            roster.less(female).less(other).more(female, roster.sire(other)).more(other, third);
        } else {
            int female = anyBred();
            roster.less(female).more(anyIdle(), kind == 5 ? roster.sire(female) : anyMale());
        }
        return roster.fits();
    }

    /** Two or three litters go, as many others come: over limits that stop each of them alone. */
    private void exchange() {
        int litters = 2 + random.nextInt(2);
        for (int i = 0; i < litters; i++) {
            int female = anyBred();
            roster.less(female).more(random.nextBoolean() ? female : anyFree(), anyMale());
        }
    }

    private int anyBred() {
        return roster.female(random.nextInt(roster.bred()));
    }

    /** Without a litter, if there is one. */
    private int anyIdle() {
        int idle = roster.free() - roster.bred();
        return idle == 0 ? anyFree() : roster.female(roster.bred() + random.nextInt(idle));
    }

    /** With a litter or without. */
    private int anyFree() {
        return roster.female(random.nextInt(roster.free()));
    }

    private int anyMale() {
        return random.nextInt(season.males);
    }

    /** Takes every change that helps, once through; false if there was none. */
    private boolean descend() {
        boolean helped = false;
        for (int female = 0; female < season.females && !stopped; female++) {
            if (roster.isFree(female)) {
                helped |= roster.hasLitter(female) ? descendAt(female) : addAt(female);
            }
        }
        return helped;
    }

    private boolean addAt(int female) {
        for (int male = 0; male < season.males; male++) {
            roster.begin();
            roster.more(female, male);
            if (takeIfItHelps()) {
                return true;
            }
        }
        return false;
    }

    private boolean descendAt(int female) {
        roster.begin();
        roster.less(female);
        if (takeIfItHelps()) {
            return true;
        }
        boolean helped = false;
        for (int male = 0; male < season.males; male++) {
            roster.begin();
            roster.less(female).more(female, male);
            helped |= takeIfItHelps();
        }
        for (int place = 0; place < roster.bred(); place++) {
            int other = roster.female(place);
            roster.begin();
            roster.less(female).less(other).more(female, roster.sire(other)).more(other, roster.sire(female));
            helped |= takeIfItHelps();
        }
        return moveFrom(female) || helped;
    }

    private boolean moveFrom(int female) {
        for (int place = roster.bred(); place < roster.free(); place++) {
            for (int male = 0; male < season.males; male++) {
                roster.begin();
                roster.less(female).more(roster.female(place), male);
                if (takeIfItHelps()) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean takeIfItHelps() {
        if (!roster.fits()) {
            return false;
        }
        if (draft.proposed() < draft.objective() - HELPS) {
            roster.take();
            return true;
        }
        roster.undo();
        return false;
    }
}
