package org.demebook.disclosure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.demebook.disclosure.Rules.Need;
import org.demebook.disclosure.Rules.Reason;

/**
 * What somebody knows who has read every release, as linear equations: the possible worlds are the whole, non-negative
 * contents of all base cells at all dates that agree with it.
 *
 * <p>There are two kinds of reader. One knows what was published. The other knows in addition how each figure changed
 * from one release to another, unless the change itself is sensitive: somebody who sees that nothing happened, or who takes
 * a large change from elsewhere. Against them, moving the withheld cells from one release to the next is no protection.
 * Either may be a respondent too, who knows their own units.
 */
final class Knowledge {
    /** The public, who has no units. */
    static final String PUBLIC = "the public";

    /**
     * An equation that a reader knows.
     *
     * @param figure place in the plan of the release that is being prepared, if that figure has to be told for it; −1 if it
     *     is known anyhow
     */
    record Sum(int[] plus, int[] minus, int value, int figure) {}

    /** Somebody who attacks, and how many units of each variable they know of. */
    record View(String who, int[] known) {
        /** Whether there is at least as much in a world as they know of. */
        boolean allows(long[] world) {
            for (int variable = 0; variable < known.length; variable++) {
                if (world[variable] < known[variable]) {
                    return false;
                }
            }
            return true;
        }
    }

    private final List<Tally> tallies = new ArrayList<>();
    private final List<Integer> offsets = new ArrayList<>();
    private final List<Sum> sums = new ArrayList<>();
    private final List<Question> questions = new ArrayList<>();
    private final Rules rules;
    private final Tally now;
    private int variables;
    private long ceiling;

    private Knowledge(List<Release> earlier, Tally now, Rules rules) {
        this.now = now;
        this.rules = rules;
        for (var release : earlier) {
            enter(release.tally());
        }
        enter(now);
        linkDivisions();
        for (int k = 0; k < earlier.size(); k++) {
            for (var figure : earlier.get(k).tally().plan().figures()) {
                if (earlier.get(k).told().contains(figure.name())) {
                    sums.add(sum(k, figure, -1));
                }
            }
        }
        for (int f = 0; f < now.plan().figures().size(); f++) {
            sums.add(sum(earlier.size(), now.plan().figures().get(f), f));
        }
    }

    /** Of somebody who knows what was published. */
    static Knowledge ofReaders(List<Release> earlier, Tally now, Rules rules) {
        var knowledge = new Knowledge(earlier, now, rules);
        int last = earlier.size();
        knowledge.askForFigures(last);
        for (int k = 0; k < last; k++) {
            knowledge.askForChanges(k, last);
        }
        return knowledge;
    }

    /** Of somebody who also knows the changes that are not sensitive. */
    static Knowledge ofObservers(List<Release> earlier, Tally now, Rules rules) {
        var knowledge = new Knowledge(earlier, now, rules);
        for (int k = 0; k < earlier.size(); k++) {
            for (int l = k + 1; l <= earlier.size(); l++) {
                knowledge.link(k, l);
            }
        }
        for (int k = 0; k <= earlier.size(); k++) {
            knowledge.askForFigures(k);
        }
        for (int k = 0; k < earlier.size(); k++) {
            knowledge.askForChanges(k, earlier.size());
        }
        return knowledge;
    }

    private void enter(Tally tally) {
        tallies.add(tally);
        offsets.add(variables);
        variables += tally.plan().baseCells().size();
        long all = Arrays.stream(truth(tally)).sum();
        ceiling = Math.max(ceiling, 4 * all + 100);
    }

    /** All divisions of a release have one sum, whatever is told of it. */
    private void linkDivisions() {
        for (int k = 0; k < tallies.size(); k++) {
            var divisions = tallies.get(k).plan().divisions();
            int[] first = range(offsets.get(k), divisions.get(0).size());
            int next = offsets.get(k) + first.length;
            for (var other : divisions.subList(1, divisions.size())) {
                sums.add(new Sum(first, range(next, other.size()), 0, -1));
                next += other.size();
            }
        }
    }

    private static int[] range(int from, int length) {
        return IntStream.range(from, from + length).toArray();
    }

    private static long[] truth(Tally tally) {
        return tally.plan().baseCells().stream()
                .mapToLong(cell -> tally.value(new Figure(cell, cell::equals)))
                .toArray();
    }

    private Sum sum(int k, Figure figure, int place) {
        return new Sum(places(k, figure), new int[0], tallies.get(k).value(figure), place);
    }

    private int[] places(int k, Figure figure) {
        return Arrays.stream(tallies.get(k).plan().covered(figure))
                .map(cell -> offsets.get(k) + cell)
                .toArray();
    }

    // ── what may not be found out ────────────────────────────────────────────────────────────────────────────────────

    private void askForFigures(int k) {
        var when = k == tallies.size() - 1 ? "" : " of release " + (k + 1);
        var tally = tallies.get(k);
        Sensitivity.figures(tally, rules)
                .forEach((figure, need) -> questions.add(new Question(
                        figure.name() + when,
                        figure.name(),
                        places(k, figure),
                        new int[0],
                        tally.value(figure),
                        need)));
        for (var line : Sensitivity.inOneClass(tally)) {
            int[] others = Sensitivity.empty(tally, line).stream()
                    .flatMapToInt(figure -> Arrays.stream(places(k, figure)))
                    .toArray();
            questions.add(new Question(
                    "empty classes of " + line.total() + when,
                    line.total(),
                    others,
                    new int[0],
                    0,
                    new Need(Reason.ALL_IN_ONE_CLASS, 0, 1)));
        }
    }

    /** What the value of a figure of the release being prepared is, whether sensitive or not. */
    Question question(Figure figure) {
        int last = tallies.size() - 1;
        return new Question(
                figure.name(),
                figure.name(),
                places(last, figure),
                new int[0],
                now.value(figure),
                new Need(Reason.FEW_RESPONDENTS, 0, 0));
    }

    private void askForChanges(int k, int l) {
        for (var figure : figures(k, l)) {
            change(k, l, figure)
                    .ifPresent(need -> questions.add(new Question(
                            "change of %s since release %d".formatted(figure.name(), k + 1),
                            figure.name(),
                            places(l, figure),
                            places(k, figure),
                            tallies.get(l).value(figure) - tallies.get(k).value(figure),
                            need)));
        }
    }

    private void link(int k, int l) {
        for (var figure : figures(k, l)) {
            if (change(k, l, figure).isEmpty()) {
                int change = tallies.get(l).value(figure) - tallies.get(k).value(figure);
                sums.add(new Sum(places(l, figure), places(k, figure), change, -1));
            }
        }
    }

    /** The figures of either release, each once. */
    private List<Figure> figures(int k, int l) {
        var figures = new LinkedHashMap<String, Figure>();
        for (int release : new int[] {k, l}) {
            tallies.get(release).plan().figures().forEach(figure -> figures.putIfAbsent(figure.name(), figure));
        }
        return List.copyOf(figures.values());
    }

    private Optional<Need> change(int k, int l, Figure figure) {
        return Sensitivity.change(tallies.get(k), tallies.get(l), figure, rules);
    }

    // ── what is asked of it ──────────────────────────────────────────────────────────────────────────────────────────

    /** The public first, then each respondent who ever had a unit; those who know the same are one. */
    List<View> views() {
        var everybody = new TreeSet<String>();
        tallies.forEach(tally -> everybody.addAll(tally.everybody()));
        var views = new TreeMap<String, View>();
        var order = new ArrayList<View>();
        for (var who : everybody) {
            var view = new View(who, known(who));
            if (views.putIfAbsent(Arrays.toString(view.known()), view) == null) {
                order.add(view);
            }
        }
        order.add(0, new View(PUBLIC, new int[variables]));
        return order;
    }

    private int[] known(String who) {
        int[] known = new int[variables];
        for (int k = 0; k < tallies.size(); k++) {
            int[] part = tallies.get(k).knownTo(who);
            System.arraycopy(part, 0, known, offsets.get(k), part.length);
        }
        return known;
    }

    /** Whether a world is possible for who is told some figures of the release being prepared. */
    boolean allows(long[] world, View view, BitSet told) {
        return view.allows(world)
                && sums.stream().allMatch(sum -> !isKnown(sum, told) || value(sum, world) == sum.value());
    }

    /** The figures of the release being prepared that have another value than the true one in a world. */
    BitSet differing(long[] world) {
        var differing = new BitSet();
        for (var sum : sums) {
            if (sum.figure() >= 0 && value(sum, world) != sum.value()) {
                differing.set(sum.figure());
            }
        }
        return differing;
    }

    private static long value(Sum sum, long[] world) {
        long value = 0;
        for (int variable : sum.plus()) {
            value += world[variable];
        }
        for (int variable : sum.minus()) {
            value -= world[variable];
        }
        return value;
    }

    static boolean isKnown(Sum sum, BitSet told) {
        return sum.figure() < 0 || told.get(sum.figure());
    }

    List<Sum> sums() {
        return sums;
    }

    List<Question> questions() {
        return questions;
    }

    int variables() {
        return variables;
    }

    /** Of the release being prepared: what is told of it in any case. */
    BitSet alwaysTold() {
        return Sensitivity.alwaysTold(now);
    }

    /** More units than any base cell needs to hold to show that something is not known. */
    long ceiling() {
        return ceiling;
    }

    /**
     * Whether a bound upwards is none: what is told bounds a figure by all units at most, a quarter of the ceiling; one that is
     * open ends at the ceiling, less what the other side of a link of divisions lacks, which is no more than all units.
     */
    boolean isOpen(long highest) {
        return highest > ceiling / 2;
    }
}
