package org.demebook.season;

/** A draft and one change of it at a time: litters that go, litters that come. Settled litters stay. */
final class Roster {
    final Draft draft;
    private final Season season;

    /** Females who are not settled: first those with a litter. */
    private final int[] free;

    private final int[] placeOf;
    private int bred;

    private final int[] females = new int[8];
    private final int[] males = new int[8];
    private final int[] signs = new int[8];
    private int changes;

    Roster(Season season, int[] plan, double weight) {
        this.season = season;
        draft = new Draft(season, plan, weight);
        boolean[] settled = new boolean[season.females];
        season.locked.forEach(pair -> settled[pair.female()] = true);
        int many = 0;
        for (boolean is : settled) {
            many += is ? 0 : 1;
        }
        free = new int[many];
        placeOf = new int[season.females];
        int last = free.length;
        for (int female = 0; female < season.females; female++) {
            if (!settled[female]) {
                int place = plan[female] == Season.NONE ? --last : bred++;
                free[place] = female;
                placeOf[female] = place;
            }
        }
    }

    /** Females who are not settled and have a litter. */
    int bred() {
        return bred;
    }

    /** Females who are not settled. */
    int free() {
        return free.length;
    }

    /** Below {@link #bred} those with a litter, from there on to {@link #free} those without. */
    int female(int place) {
        return free[place];
    }

    boolean isFree(int female) {
        return free.length > 0 && free[placeOf[female]] == female;
    }

    int sire(int female) {
        return draft.sires[female];
    }

    boolean hasLitter(int female) {
        return draft.sires[female] != Season.NONE;
    }

    void begin() {
        changes = 0;
    }

    /** Her litter goes. */
    Roster less(int female) {
        return change(female, draft.sires[female], -1);
    }

    /** A litter comes. */
    Roster more(int female, int male) {
        return change(female, male, 1);
    }

    private Roster change(int female, int male, int sign) {
        females[changes] = female;
        males[changes] = male;
        signs[changes++] = sign;
        return this;
    }

    /** Whether the change is one and keeps all limits; if so it is counted, and to be taken or undone. */
    boolean fits() {
        if (!isOne()) {
            return false;
        }
        count(1);
        if (draft.keepsLimits()) {
            return true;
        }
        undo();
        return false;
    }

    /** Each female loses one litter at most and has one at most afterwards, by a male she may have. */
    private boolean isOne() {
        for (int i = 0; i < changes; i++) {
            boolean lost = false;
            for (int j = 0; j < changes; j++) {
                if (i != j && females[i] == females[j]) {
                    if (signs[i] == signs[j]) {
                        return false;
                    }
                    lost |= signs[j] < 0;
                }
            }
            if (signs[i] > 0 && (!season.isOpen(females[i], males[i]) || hasLitter(females[i]) && !lost)) {
                return false;
            }
        }
        return true;
    }

    private void count(int sign) {
        draft.begin();
        for (int i = 0; i < changes; i++) {
            draft.shift(females[i], males[i], sign * signs[i]);
        }
    }

    void undo() {
        count(-1);
    }

    /** Makes the change good; its worth was asked. */
    void take() {
        draft.take();
        for (int sign = -1; sign <= 1; sign += 2) {
            for (int i = 0; i < changes; i++) {
                if (signs[i] == sign) {
                    place(females[i], sign < 0 ? Season.NONE : males[i]);
                }
            }
        }
        draft.settle();
    }

    private void place(int female, int male) {
        boolean was = hasLitter(female);
        boolean is = male != Season.NONE;
        draft.sires[female] = male;
        if (was != is) {
            int to = is ? bred++ : --bred;
            int displaced = free[to];
            free[placeOf[female]] = displaced;
            placeOf[displaced] = placeOf[female];
            free[to] = female;
            placeOf[female] = to;
        }
    }

    /** Goes over to another plan that keeps all limits. */
    void become(int[] plan) {
        for (int female = 0; female < plan.length; female++) {
            if (draft.sires[female] != plan[female]) {
                begin();
                if (hasLitter(female)) {
                    less(female);
                }
                if (plan[female] != Season.NONE) {
                    more(female, plan[female]);
                }
                count(1);
                draft.proposed();
                take();
            }
        }
    }
}
