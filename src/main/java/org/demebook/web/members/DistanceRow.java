package org.demebook.web.members;

import java.util.ArrayList;
import java.util.List;
import org.demebook.keeper.RegionDistances;
import org.demebook.keeper.RegionDistances.RegionPair;
import org.demebook.problem.Finding;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.web.Typed;
import org.jspecify.annotations.Nullable;

/**
 * Two regions and what is known of how far apart they are.
 *
 * @param index names the fields of the row: {@code pairs[3].kilometres}
 * @param kilometres null when nothing is known
 */
public record DistanceRow(
        int index, String one, String other, @Nullable Integer kilometres, boolean border) {
    private static final int FARTHEST = 20_000;

    public String field(String name) {
        return field(index, name);
    }

    /** What stands in the row: what was typed when that is shown again, else what is known. */
    public String shown(Typed typed) {
        return typed.isRefused() ? typed.value(field("kilometres")) : kilometres == null ? "" : kilometres.toString();
    }

    public boolean ticked(Typed typed) {
        return typed.isRefused() ? typed.has(field("border"), "true") : border;
    }

    private static String field(int index, String name) {
        return "pairs[%d].%s".formatted(index, name);
    }

    /** Every pair of regions once. */
    static List<DistanceRow> of(List<String> names, RegionDistances known) {
        var rows = new ArrayList<DistanceRow>();
        for (int i = 0; i < names.size(); i++) {
            for (int j = i + 1; j < names.size(); j++) {
                var pair = known.between(names.get(i), names.get(j));
                rows.add(new DistanceRow(
                        rows.size(),
                        names.get(i),
                        names.get(j),
                        pair.map(RegionPair::kilometres).orElse(null),
                        pair.map(RegionPair::border).orElse(false)));
            }
        }
        return rows;
    }

    /** The pairs of which something was typed; refuses at each field that is no distance. */
    static RegionDistances stated(Typed typed, MembersMessages words) {
        var pairs = new ArrayList<RegionPair>();
        var findings = new ArrayList<Finding>();
        for (int i = 0; typed.text(field(i, "one")) != null; i++) {
            var kilometres = typed.text(field(i, "kilometres"));
            if (kilometres == null) {
                continue;
            }
            if (!kilometres.matches("\\d{1,5}") || Integer.parseInt(kilometres) > FARTHEST) {
                findings.add(Finding.error(field(i, "kilometres"), kilometres, words.wholeNumber(FARTHEST)));
                continue;
            }
            pairs.add(new RegionPair(
                    typed.value(field(i, "one")),
                    typed.value(field(i, "other")),
                    Integer.parseInt(kilometres),
                    typed.has(field(i, "border"), "true")));
        }
        if (!findings.isEmpty()) {
            throw new Refusal(ProblemType.INVALID_VALUES, words.wholeNumber(FARTHEST), findings);
        }
        return new RegionDistances(pairs);
    }
}
