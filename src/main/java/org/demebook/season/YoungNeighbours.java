package org.demebook.season;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * Plans that differ from one by a single change: another sire for a litter, two litters that swap sires, a litter moved to another
 * dam, one more, one fewer. Of each kind those first that promise most at the season's numbers of young.
 */
final class YoungNeighbours {
    private static final int NOBODY = -1;

    private final Season season;
    private final int[] plan;
    private final int each;
    private final Roster roster;
    private final List<int[]> best = new ArrayList<>();
    private final PriorityQueue<Change> kind =
            new PriorityQueue<>(Comparator.comparingDouble(Change::promises).reversed());

    /** Two females, or one and nobody, and whom they have then. */
    private record Change(int female, int male, int other, int otherMale, double promises) {}

    private YoungNeighbours(Season season, int[] plan, int each) {
        this.season = season;
        this.plan = plan;
        this.each = each;
        roster = new Roster(season, plan, 0);
    }

    /** Of a plan that keeps all constraints, so many neighbours of each kind at most that do so too. */
    static List<int[]> of(Season season, int[] plan, int each) {
        var neighbours = new YoungNeighbours(season, plan, each);
        neighbours.look();
        return neighbours.best;
    }

    private void look() {
        for (int place = 0; place < roster.bred(); place++) {
            int female = roster.female(place);
            for (int male = 0; male < season.males; male++) {
                if (male != roster.sire(female)) {
                    consider(female, male, NOBODY, Season.NONE);
                }
            }
        }
        take();
        for (int place = 0; place < roster.bred(); place++) {
            for (int to = place + 1; to < roster.bred(); to++) {
                int female = roster.female(place);
                int other = roster.female(to);
                consider(female, roster.sire(other), other, roster.sire(female));
            }
        }
        take();
        for (int place = 0; place < roster.bred(); place++) {
            for (int to = roster.bred(); to < roster.free(); to++) {
                for (int male = 0; male < season.males; male++) {
                    consider(roster.female(place), Season.NONE, roster.female(to), male);
                }
            }
        }
        take();
        for (int to = roster.bred(); to < roster.free() && season.least < season.most; to++) {
            for (int male = 0; male < season.males; male++) {
                consider(roster.female(to), male, NOBODY, Season.NONE);
            }
        }
        take();
        for (int place = 0; place < roster.bred() && season.least < season.most; place++) {
            consider(roster.female(place), Season.NONE, NOBODY, Season.NONE);
        }
        take();
    }

    private void consider(int female, int male, int other, int otherMale) {
        roster.begin();
        change(female, male);
        change(other, otherMale);
        if (roster.fits()) {
            double promises = roster.draft.proposed();
            roster.undo();
            if (kind.size() < each || promises < kind.element().promises()) {
                kind.add(new Change(female, male, other, otherMale, promises));
            }
            if (kind.size() > each) {
                kind.remove();
            }
        }
    }

    private void change(int female, int male) {
        if (female != NOBODY && roster.hasLitter(female)) {
            roster.less(female);
        }
        if (female != NOBODY && male != Season.NONE) {
            roster.more(female, male);
        }
    }

    /** The kind's best, and on to the next. */
    private void take() {
        kind.stream()
                .sorted(Comparator.comparingDouble(Change::promises))
                .map(this::changed)
                .forEach(best::add);
        kind.clear();
    }

    private int[] changed(Change change) {
        int[] changed = plan.clone();
        changed[change.female()] = change.male();
        if (change.other() != NOBODY) {
            changed[change.other()] = change.otherMale();
        }
        return changed;
    }
}
