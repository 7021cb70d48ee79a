package org.demebook.web.sheets;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.demebook.problem.Finding;
import org.demebook.problem.LeftAsIs;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.problem.Rule;
import org.demebook.sheet.Sheet;
import org.demebook.sheet.Sheet.Place;
import org.demebook.web.Typed;

/**
 * A sheet as it travels in the form of its check: the text of all of it ({@code sheet}), the cells that were written anew ({@code
 * cell.17.3}), rows to leave out ({@code without}), rules to leave as it is ({@code leave}) and why ({@code reason.the-rule}).
 */
final class SheetForm {
    static final String SHEET = "sheet";
    static final String WITHOUT = "without";
    static final String LEAVE = "leave";
    private static final String REASON = "reason.";
    private static final Pattern CELL = Pattern.compile("cell\\.(\\d{1,7})\\.(\\d{1,3})");
    private static final Pattern ROW = Pattern.compile("\\d{1,7}");

    private SheetForm() {}

    static String cell(int row, int place) {
        return "cell." + row + "." + place;
    }

    static String reason(String rule) {
        return REASON + rule;
    }

    /** The sheet as it is now: with what was written into its cells. */
    static Sheet sheet(Typed typed) {
        Map<Place, String> cells = new HashMap<>();
        for (var name : typed.fields()) {
            var cell = CELL.matcher(name);
            if (cell.matches()) {
                cells.put(
                        new Place(Integer.parseInt(cell.group(1)), Integer.parseInt(cell.group(2))), typed.value(name));
            }
        }
        var without = typed.values(WITHOUT).stream()
                .filter(row -> ROW.matcher(row).matches())
                .map(Integer::valueOf)
                .collect(Collectors.toSet());
        return Sheet.read(typed.value(SHEET).getBytes(StandardCharsets.UTF_8)).with(cells, without);
    }

    /** What is left as it is; refuses at the field of each reason that is missing. */
    static List<LeftAsIs> left(Typed typed, SheetsMessages words) {
        var left = new ArrayList<LeftAsIs>();
        var findings = new ArrayList<Finding>();
        for (var rule : rules(typed)) {
            var reason = typed.value(reason(rule.word())).strip();
            if (!isReason(reason)) {
                findings.add(Finding.error(
                        reason(rule.word()),
                        reason,
                        words.reasonWanted(LeftAsIs.SHORTEST_REASON, LeftAsIs.LONGEST_REASON)));
            }
            left.add(new LeftAsIs(rule.word(), reason));
        }
        if (!findings.isEmpty()) {
            throw new Refusal(ProblemType.INVALID_VALUES, words.mendFirst(), findings);
        }
        return left;
    }

    /** The same where a reason is there. */
    static List<LeftAsIs> givenReasons(Typed typed) {
        return rules(typed).stream()
                .map(rule -> new LeftAsIs(
                        rule.word(), typed.value(reason(rule.word())).strip()))
                .filter(left -> isReason(left.reason()))
                .toList();
    }

    private static boolean isReason(String text) {
        return text.length() >= LeftAsIs.SHORTEST_REASON && text.length() <= LeftAsIs.LONGEST_REASON;
    }

    /** The rules that were ticked. */
    static List<Rule> rules(Typed typed) {
        return typed.values(LEAVE).stream()
                .flatMap(word -> Rule.of(word).stream())
                .distinct()
                .toList();
    }
}
