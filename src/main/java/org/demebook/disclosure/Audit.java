package org.demebook.disclosure;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.demebook.disclosure.Knowledge.View;

/**
 * What everybody can find out from a release and all earlier ones, computed by another solver than the one that chose what is
 * withheld.
 *
 * <p>For every sensitive figure and every sensitive change, as the public sees it and as each respondent sees it who knows
 * their own units: is the smallest value in the whole, non-negative worlds that agree with all that is told as low as it must
 * be, and the largest as high? This is believed only with a world that shows it, checked without rounding; so no error of
 * the solver lets a release pass. A world found for one view is shown to the others too, which saves most of the programs.
 *
 * @param findings one for each question, each kind of reader and each view
 */
public record Audit(List<Finding> findings) {
    /**
     * The bounds that somebody finds.
     *
     * @param subject a figure, or the change of one
     * @param figure its name
     * @param who the public or a respondent
     * @param value true value
     * @param lowest a value that they hold possible; the smallest one where they are the public, or the finding is not safe
     * @param highest likewise
     * @param isSafe whether both bounds are as far out as they must be
     */
    public record Finding(
            String subject, String figure, String who, int value, long lowest, long highest, boolean isSafe) {
        boolean isExact() {
            return lowest == highest;
        }
    }

    /** Bounds that the public finds for a figure; whole, {@code highest} −1 where there is none. */
    public record Interval(long lowest, long highest) {}

    /**
     * Audits a release before it is published.
     *
     * @throws ArithmeticException if the solver does not find a bound
     */
    public static Audit of(List<Release> earlier, Release now, Rules rules) {
        var findings = new ArrayList<Finding>();
        find(Knowledge.ofReaders(earlier, now.tally(), rules), now, findings);
        if (!earlier.isEmpty()) {
            find(Knowledge.ofObservers(earlier, now.tally(), rules), now, findings);
        }
        return new Audit(findings);
    }

    private static void find(Knowledge knowledge, Release now, List<Finding> findings) {
        var told = told(now);
        var worlds = new ArrayList<long[]>();
        for (var question : knowledge.questions()) {
            for (var view : knowledge.views()) {
                long low = question.value() - question.need().below();
                long high = question.value() + question.need().above();
                long lowest = -extreme(knowledge, question, view, told, -low, false, worlds);
                long highest = extreme(knowledge, question, view, told, high, true, worlds);
                boolean isSafe = (lowest <= low || lowest == extreme(knowledge, question, view, false))
                        && (highest >= high || highest == extreme(knowledge, question, view, true));
                findings.add(new Finding(
                        question.subject(), question.figure(), view.who(), question.value(), lowest, highest, isSafe));
            }
        }
    }

    /** The largest value, or the smallest times −1; of those who are not the public, one that is far enough will do. */
    private static long extreme(
            Knowledge knowledge,
            Question question,
            View view,
            BitSet told,
            long enough,
            boolean upwards,
            List<long[]> worlds) {
        int sign = upwards ? 1 : -1;
        if (!view.who().equals(Knowledge.PUBLIC)) {
            for (var world : worlds) {
                if (sign * question.in(world) >= enough && view.allows(world)) {
                    return sign * question.in(world);
                }
            }
        }
        var world = Bound.world(knowledge, question, view, told, upwards);
        worlds.add(world);
        return sign * question.in(world);
    }

    /** The bound where no more of the release is told than always: what earlier releases tell cannot be taken back. */
    private static long extreme(Knowledge knowledge, Question question, View view, boolean upwards) {
        return question.in(Bound.world(knowledge, question, view, knowledge.alwaysTold(), upwards));
    }

    private static BitSet told(Release release) {
        var told = new BitSet();
        var figures = release.tally().plan().figures();
        for (int f = 0; f < figures.size(); f++) {
            told.set(f, release.told().contains(figures.get(f).name()));
        }
        return told;
    }

    /** What everybody can work out from this release alone for the figures that it withholds. */
    public static Map<String, Interval> intervals(Release release, Rules rules) {
        var knowledge = Knowledge.ofReaders(List.of(), release.tally(), rules);
        var view = knowledge.views().get(0);
        var intervals = new LinkedHashMap<String, Interval>();
        for (var figure : release.tally().plan().figures()) {
            if (!release.told().contains(figure.name())) {
                var question = knowledge.question(figure);
                long lowest = question.in(Bound.world(knowledge, question, view, told(release), false));
                long highest = question.in(Bound.world(knowledge, question, view, told(release), true));
                intervals.put(figure.name(), new Interval(lowest, knowledge.isOpen(highest) ? -1 : highest));
            }
        }
        return intervals;
    }

    public boolean passed() {
        return findings.stream().allMatch(Finding::isSafe);
    }

    /** The figures that are not safe, or whose change is not, each once. */
    public List<String> unsafe() {
        return List.copyOf(findings.stream()
                .filter(finding -> !finding.isSafe())
                .map(Finding::subject)
                .collect(Collectors.toCollection(LinkedHashSet::new)));
    }

    /** In words, with the true numbers: not for the public. */
    public String report() {
        if (passed()) {
            return "passed";
        }
        var exact = new LinkedHashMap<String, Integer>();
        findings.stream()
                .filter(finding -> !finding.isSafe() && finding.isExact())
                .forEach(finding -> exact.putIfAbsent(finding.subject(), finding.value()));
        if (exact.isEmpty()) {
            return "too close: " + String.join(", ", unsafe());
        }
        return exact.values().stream().map(String::valueOf).collect(Collectors.joining(", "))
                + " recovered exactly ("
                + String.join(", ", exact.keySet())
                + ")";
    }
}
