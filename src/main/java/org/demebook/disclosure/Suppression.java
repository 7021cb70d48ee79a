package org.demebook.disclosure;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.Literal;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.demebook.disclosure.Knowledge.View;

/**
 * Chooses which figures of a release are withheld: the least total value, and among such the fewest figures, so that nobody
 * narrows a sensitive figure, or a sensitive change since an earlier release, to less than it needs.
 *
 * <p>What the reader can find out grows with what is told. So from each pattern that is not safe follows a set of figures of
 * which at least one has to be withheld; the lightest choice that meets all sets found so far is proved to be the lightest
 * by the solver, and tried next. The first that is safe is the lightest safe one. What the reader knows from earlier releases
 * alone cannot be taken back: for it is asked that the new release tells no more.
 *
 * <p>Figures that are empty are told, unless everything in their row or column stands in one class.
 *
 * <p>Cost: the number of sets grows with the number of figures, in the worst case exponentially; a table of 20 figures takes
 * some milliseconds. Source of the problem: Fischetti &amp; Salazar (2001), Management Science 47: 1008–1027 (from memory);
 * that a set of figures is enough for a cut follows from the multipliers of the linear program.
 */
public final class Suppression {
    private static final double MOST_WORK = 120;
    private static final int MOST_PATTERNS = 5_000;

    private final Tally now;
    private final List<Figure> figures;
    private final BitSet alwaysTold;
    private final List<Attack> attacks = new ArrayList<>();
    private final Set<BitSet> cuts = new LinkedHashSet<>();

    private Suppression(Tally now) {
        this.now = now;
        this.figures = now.plan().figures();
        this.alwaysTold = Sensitivity.alwaysTold(now);
    }

    /**
     * The release that tells as much as it may.
     *
     * @param earlier all earlier releases, which everybody knows
     * @throws ArithmeticException if the solver cannot prove within its allowance of work that its choice is the lightest
     */
    public static Release choose(List<Release> earlier, Tally now, Rules rules) {
        var suppression = new Suppression(now);
        try (var reader = new Attack(Knowledge.ofReaders(earlier, now, rules));
                var observer = new Attack(Knowledge.ofObservers(earlier, now, rules))) {
            suppression.attacks.add(reader);
            if (!earlier.isEmpty()) {
                suppression.attacks.add(observer);
            }
            return suppression.choose(rules);
        }
    }

    private Release choose(Rules rules) {
        for (var figure : Sensitivity.figures(now, rules).keySet()) {
            var one = new BitSet();
            one.set(figures.indexOf(figure));
            cuts.add(one);
        }
        for (int pattern = 0; pattern < MOST_PATTERNS; pattern++) {
            var told = lightest();
            int known = cuts.size();
            attacks.forEach(attack -> cuts.addAll(attack.cuts(told)));
            if (cuts.size() == known) {
                return new Release(now, names(told));
            }
        }
        throw new ArithmeticException("None of the %d lightest patterns is safe".formatted(MOST_PATTERNS));
    }

    /** What is told when the least is withheld that meets every cut. */
    private BitSet lightest() {
        var model = new CpModel();
        var withheld = new BoolVar[figures.size()];
        var weights = new long[figures.size()];
        for (int f = 0; f < withheld.length; f++) {
            withheld[f] = model.newBoolVar(figures.get(f).name());
            weights[f] = (long) now.value(figures.get(f)) * (figures.size() + 1) + 1;
        }
        alwaysTold.stream().forEach(f -> model.addEquality(withheld[f], 0));
        for (var cut : cuts) {
            model.addBoolOr(cut.stream().mapToObj(f -> withheld[f]).toArray(Literal[]::new));
        }
        model.minimize(LinearExpr.weightedSum(withheld, weights));
        var solver = Reach.frugal(MOST_WORK);
        if (solver.solve(model) != CpSolverStatus.OPTIMAL) {
            throw new ArithmeticException("The lightest pattern was not proved within the work allowed");
        }
        var told = new BitSet();
        for (int f = 0; f < withheld.length; f++) {
            told.set(f, !solver.booleanValue(withheld[f]));
        }
        return told;
    }

    private Set<String> names(BitSet told) {
        var names = new LinkedHashSet<String>();
        told.stream().forEach(f -> names.add(figures.get(f).name()));
        return names;
    }

    /** One kind of reader, and the worlds found so far. */
    private static final class Attack implements AutoCloseable {
        private final Knowledge knowledge;
        private final Reach reach;
        private final List<View> views;
        private final BitSet always;
        private final List<long[]> worlds = new ArrayList<>();
        private final List<BitSet> differing = new ArrayList<>();
        private final long[][][] targets;

        Attack(Knowledge knowledge) {
            this.knowledge = knowledge;
            reach = new Reach(knowledge);
            views = knowledge.views();
            always = knowledge.alwaysTold();
            targets = new long[knowledge.questions().size()][views.size()][];
        }

        /** Sets of figures of which one has to be withheld; none where it is safe to tell what is told. */
        Set<BitSet> cuts(BitSet told) {
            var cuts = new LinkedHashSet<BitSet>();
            for (int q = 0; q < targets.length; q++) {
                for (int v = 0; v < views.size(); v++) {
                    for (int way = 0; way < 2; way++) {
                        if (!isMet(q, v, way, told)) {
                            cuts.add(smallest(q, v, way, told));
                        }
                    }
                }
            }
            return cuts;
        }

        /** Fewer figures that, beside those that are always told, already tell too much. */
        private BitSet smallest(int q, int v, int way, BitSet told) {
            var cut = (BitSet) told.clone();
            for (int f = told.nextSetBit(0); f >= 0; f = told.nextSetBit(f + 1)) {
                if (!cut.get(f) || always.get(f)) {
                    continue;
                }
                cut.clear(f);
                var best = best(q, v, way, cut);
                if (reaches(q, v, way, best.value())) {
                    cut.set(f);
                } else {
                    var binding = (BitSet) best.binding().clone();
                    binding.or(always);
                    cut.and(binding);
                }
            }
            cut.andNot(always);
            return cut;
        }

        private boolean isMet(int q, int v, int way, BitSet told) {
            var question = knowledge.questions().get(q);
            for (int w = worlds.size() - 1; w >= 0; w--) {
                if (reaches(q, v, way, question.in(worlds.get(w)))
                        && !differing.get(w).intersects(told)
                        && views.get(v).allows(worlds.get(w))) {
                    return true;
                }
            }
            return reaches(q, v, way, best(q, v, way, told).value());
        }

        private Reach.Best best(int q, int v, int way, BitSet told) {
            var best = reach.best(knowledge.questions().get(q), views.get(v), way == 1, told);
            worlds.add(best.world());
            differing.add(knowledge.differing(best.world()));
            return best;
        }

        private boolean reaches(int q, int v, int way, long value) {
            long target = targets(q, v)[way];
            return way == 1 ? value >= target : value <= target;
        }

        /** Down and up: what is needed, or what is possible where no more is told than always. */
        private long[] targets(int q, int v) {
            if (targets[q][v] == null) {
                var question = knowledge.questions().get(q);
                long lowest = best(q, v, 0, always).value();
                long highest = best(q, v, 1, always).value();
                targets[q][v] = new long[] {
                    Math.max(question.value() - question.need().below(), lowest),
                    Math.min(question.value() + question.need().above(), highest)
                };
            }
            return targets[q][v];
        }

        @Override
        public void close() {
            reach.close();
        }
    }
}
