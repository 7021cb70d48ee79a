package org.demebook.season;

import java.util.SplittableRandom;

/**
 * Betters a plan by small changes: another sire for a litter, two litters that swap sires, a litter moved to another dam, and
 * where numbers are free one more or one fewer. First with simulated annealing (Kirkpatrick, Gelatt and Vecchi 1983, from
 * memory), then with the best change that helps until none does. Settled pairs stay.
 */
final class Search {
    private static final int LOOK_EVERY = 1 << 14;
    private static final int COOL_EVERY = 1 << 8;
    private static final int SAMPLES = 200;
    private static final double COOLED = 1e-4;
    private static final double HELPS = 1e-15;

    private final Season season;
    private final Draft draft;
    private final SplittableRandom random;
    private final Watch watch;
    private final double bound;

    /** Females who are not settled: first those with a litter. */
    private final int[] free;

    private final int[] placeOf;
    private int bred;

    private final int[] females = new int[8];
    private final int[] males = new int[8];
    private final int[] signs = new int[8];
    private int changes;

    private int[] best;
    private double bestObjective;
    private long done;
    private boolean stopped;

    Search(Season season, int[] start, double weight, double bound, long seed, Watch watch) {
        this.season = season;
        this.bound = bound;
        this.watch = watch;
        draft = new Draft(season, start, weight);
        random = new SplittableRandom(seed);
        boolean[] settled = new boolean[season.females];
        season.locked.forEach(pair -> settled[pair.female()] = true);
        free = new int[season.females - season.locked.size()];
        placeOf = new int[season.females];
        int last = free.length;
        for (int female = 0; female < season.females; female++) {
            if (!settled[female]) {
                int place = start[female] == Season.NONE ? --last : bred++;
                free[place] = female;
                placeOf[female] = place;
            }
        }
        best = start.clone();
        bestObjective = draft.objective();
    }

    /** The best plan found in so many moves, never worse than the start. At heat 1 it roams, at less it stays near. */
    int[] run(long moves, double heat) {
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
        restoreBest();
        while (!stopped && descend()) {
            keepIfBest();
            look(moves);
        }
        return best;
    }

    double objective() {
        return bestObjective;
    }

    boolean stopped() {
        return stopped;
    }

    private void look(long moves) {
        stopped |= !watch.goOn(new Progress(Math.min(done, moves), moves, bestObjective, bound));
    }

    private double usualChange() {
        double sum = 0;
        int seen = 0;
        for (int sample = 0; sample < SAMPLES; sample++) {
            if (propose()) {
                sum += Math.abs(draft.proposed() - draft.objective());
                seen++;
                undo();
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
            take();
            keepIfBest();
        } else {
            undo();
        }
    }

    private void keepIfBest() {
        if (draft.objective() < bestObjective - HELPS) {
            bestObjective = draft.objective();
            best = draft.sires.clone();
        }
    }

    /** Shifts the counts by a change at random; false, and nothing shifted, where it breaks a limit or is none. */
    private boolean propose() {
        changes = 0;
        if (free.length == 0 || season.males == 0) {
            return false;
        }
        boolean numbersAreFree = season.least < season.most;
        int kind = random.nextInt(numbersAreFree ? 10 : 8);
        if (kind >= 8) {
            return kind == 8 ? addOne() : dropOne();
        }
        if (bred == 0) {
            return false;
        }
        int female = free[random.nextInt(bred)];
        int male = draft.sires[female];
        if (kind < 3) {
            change(female, male, -1);
            change(female, random.nextInt(season.males), 1);
        } else if (kind < 5) {
            int other = free[random.nextInt(bred)];
            change(female, male, -1);
            change(other, draft.sires[other], -1);
            change(female, draft.sires[other], 1);
            change(other, kind == 3 ? male : random.nextInt(season.males), 1);
        } else if (kind == 7) {
            return exchangeTwo();
        } else {
            if (bred == free.length) {
                return false;
            }
            int other = free[bred + random.nextInt(free.length - bred)];
            change(female, male, -1);
            change(other, kind == 5 ? male : random.nextInt(season.males), 1);
        }
        return shifted();
    }

    /** Two litters go, two others come: over limits that stop each of them alone. */
    private boolean exchangeTwo() {
        int first = random.nextInt(bred);
        int second = random.nextInt(bred);
        change(free[first], draft.sires[free[first]], -1);
        change(free[second], draft.sires[free[second]], -1);
        change(free[random.nextBoolean() ? first : random.nextInt(free.length)], random.nextInt(season.males), 1);
        change(free[random.nextBoolean() ? second : random.nextInt(free.length)], random.nextInt(season.males), 1);
        boolean taken = isBredBesides(females[2]) || isBredBesides(females[3]);
        return !taken && shifted();
    }

    /** Whether she has a litter that does not go with this change. */
    private boolean isBredBesides(int female) {
        return draft.sires[female] != Season.NONE && female != females[0] && female != females[1];
    }

    private boolean addOne() {
        if (bred == free.length) {
            return false;
        }
        change(free[bred + random.nextInt(free.length - bred)], random.nextInt(season.males), 1);
        return shifted();
    }

    private boolean dropOne() {
        if (bred == 0) {
            return false;
        }
        int female = free[random.nextInt(bred)];
        change(female, draft.sires[female], -1);
        return shifted();
    }

    private void change(int female, int male, int sign) {
        females[changes] = female;
        males[changes] = male;
        signs[changes++] = sign;
    }

    private boolean shifted() {
        if (changes == 4 && (females[0] == females[1] || females[2] == females[3])) {
            return false;
        }
        for (int i = 0; i < changes; i++) {
            if (signs[i] > 0 && !season.isOpen(females[i], males[i])) {
                return false;
            }
        }
        draft.begin();
        for (int i = 0; i < changes; i++) {
            draft.shift(females[i], males[i], signs[i]);
        }
        if (draft.keepsLimits()) {
            return true;
        }
        undo();
        return false;
    }

    private void undo() {
        draft.begin();
        for (int i = 0; i < changes; i++) {
            draft.shift(females[i], males[i], -signs[i]);
        }
    }

    private void take() {
        draft.take();
        for (int i = 0; i < changes; i++) {
            if (signs[i] < 0) {
                place(females[i], Season.NONE);
            }
        }
        for (int i = 0; i < changes; i++) {
            if (signs[i] > 0) {
                place(females[i], males[i]);
            }
        }
        draft.settle();
    }

    private void place(int female, int male) {
        boolean was = draft.sires[female] != Season.NONE;
        draft.sires[female] = male;
        boolean is = male != Season.NONE;
        if (was != is) {
            int to = is ? bred++ : --bred;
            int displaced = free[to];
            free[placeOf[female]] = displaced;
            placeOf[displaced] = placeOf[female];
            free[to] = female;
            placeOf[female] = to;
        }
    }

    private void restoreBest() {
        for (int female = 0; female < season.females; female++) {
            if (draft.sires[female] != best[female]) {
                rebuild(female, draft.sires[female], best[female]);
            }
        }
    }

    /** One female after the other, since a change holds few parts; limits may be broken on the way. */
    private void rebuild(int female, int from, int to) {
        changes = 0;
        if (from != Season.NONE) {
            change(female, from, -1);
        }
        if (to != Season.NONE) {
            change(female, to, 1);
        }
        draft.begin();
        for (int i = 0; i < changes; i++) {
            draft.shift(females[i], males[i], signs[i]);
        }
        draft.proposed();
        take();
    }

    /** Takes every change that helps, once through; false if there was none. */
    private boolean descend() {
        boolean helped = false;
        for (int female = 0; female < season.females; female++) {
            helped |= isFree(female) && descendAt(female);
        }
        return helped;
    }

    private boolean isFree(int female) {
        return free.length > 0 && free[placeOf[female]] == female;
    }

    private boolean descendAt(int female) {
        boolean helped = false;
        if (draft.sires[female] == Season.NONE) {
            for (int male = 0; male < season.males; male++) {
                changes = 0;
                change(female, male, 1);
                if (tryToHelp()) {
                    return true;
                }
            }
            return false;
        }
        changes = 0;
        change(female, draft.sires[female], -1);
        if (tryToHelp()) {
            return true;
        }
        for (int male = 0; male < season.males; male++) {
            changes = 0;
            change(female, draft.sires[female], -1);
            change(female, male, 1);
            helped |= tryToHelp();
        }
        for (int i = 0; i < bred; i++) {
            int other = free[i];
            changes = 0;
            change(female, draft.sires[female], -1);
            change(other, draft.sires[other], -1);
            change(female, draft.sires[other], 1);
            change(other, draft.sires[female], 1);
            helped |= tryToHelp();
        }
        for (int i = bred; i < free.length; i++) {
            for (int male = 0; male < season.males; male++) {
                changes = 0;
                change(female, draft.sires[female], -1);
                change(free[i], male, 1);
                if (tryToHelp()) {
                    return true;
                }
            }
        }
        return helped;
    }

    private boolean tryToHelp() {
        if (!shifted()) {
            return false;
        }
        if (draft.proposed() < draft.objective() - HELPS) {
            take();
            return true;
        }
        undo();
        return false;
    }
}
