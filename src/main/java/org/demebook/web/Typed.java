package org.demebook.web;

import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.demebook.problem.Finding;
import org.demebook.problem.Problem;
import org.demebook.problem.Rule;
import org.jspecify.annotations.Nullable;

/**
 * What somebody typed into a form, kept as it was typed, with what is wrong about it. Fields are called as in the body of the same
 * request to the API: {@code bornOn}, {@code outcome.liveBorn}, {@code young[2].sex}; so a finding of the API is told at its field.
 *
 * <p>A template shows {@code typed.value('bornOn')} and {@code typed.wrong('bornOn')}, which also notes that it was told: what was
 * not told at a field is in {@link #untold()}, for the summary below the fields that a form has to show last.
 */
public final class Typed {
    private final MultivaluedMap<String, String> values;
    private final @Nullable Problem problem;
    private final Set<String> told = new HashSet<>();

    private Typed(MultivaluedMap<String, String> values, @Nullable Problem problem) {
        this.values = values;
        this.problem = problem;
    }

    /** A form as it is opened. */
    public static Typed nothing() {
        return new Typed(new MultivaluedHashMap<>(), null);
    }

    public static Typed of(MultivaluedMap<String, String> values) {
        return new Typed(values, null);
    }

    /** The same, with a value that is offered when the form is opened. */
    public Typed with(String field, @Nullable Object value) {
        if (value != null) {
            values.putSingle(field, value.toString());
        }
        return this;
    }

    Typed refused(Problem refusal) {
        return new Typed(values, refusal);
    }

    /** All of it, as it was typed. */
    MultivaluedMap<String, String> all() {
        return values;
    }

    /** The names of all fields that were sent. */
    public Set<String> fields() {
        return values.keySet();
    }

    /** What stands in a field; empty when nothing does. */
    public String value(String field) {
        return Objects.requireNonNullElse(values.getFirst(field), "");
    }

    public List<String> values(String field) {
        return Objects.requireNonNullElse(values.get(field), List.of());
    }

    /** What stands in a field; null when nothing but space does. */
    public @Nullable String text(String field) {
        var text = value(field).strip();
        return text.isEmpty() ? null : text;
    }

    /** The revision that the form was opened on ({@code revision}), as a door takes it: an ETag with its quotes. */
    public String ifMatch() {
        return "\"" + value("revision") + "\"";
    }

    /** Whether a box is ticked, or a choice taken. */
    public boolean has(String field, Object value) {
        return values(field).contains(value.toString());
    }

    public boolean isRefused() {
        return problem != null;
    }

    public @Nullable Problem getProblem() {
        return problem;
    }

    /** What is wrong at a field, in sentences; null when nothing is. A field that takes several values ends in {@code []}. */
    public @Nullable String wrong(String name) {
        var field = name.endsWith("[]") ? name.substring(0, name.length() - 2) : name;
        told.add(field);
        if (problem == null) {
            return null;
        }
        var sentences = problem.findings().stream()
                .filter(finding -> field.equals(finding.field()))
                .map(Finding::message)
                .toList();
        return sentences.isEmpty() ? null : String.join(" ", sentences);
    }

    /** What is wrong and was told at no field so far. */
    public List<Finding> untold() {
        var untold = new ArrayList<Finding>();
        if (problem != null) {
            problem.findings().stream()
                    .filter(finding -> finding.field() == null || !told.contains(finding.field()))
                    .forEach(untold::add);
        }
        return untold;
    }

    /**
     * A finding that the form may leave as it is, with a reason.
     *
     * @param place in the list {@code leave} of the body
     * @param message what was found; empty where a reason was given before
     * @param reason as it was typed
     */
    public record Leaf(int place, Rule rule, String message, String reason) {
        public String field() {
            return "leave[%d].reason".formatted(place);
        }
    }

    /** What was left with a reason before, and what blocks now and may be left: for the form that is shown again. */
    public List<Leaf> leaves() {
        var leaves = new ArrayList<Leaf>();
        for (int place = 0; values.containsKey("leave[%d].rule".formatted(place)); place++) {
            var reason = text("leave[%d].reason".formatted(place));
            var rule = Rule.of(value("leave[%d].rule".formatted(place)));
            if (reason != null && rule.isPresent()) {
                leaves.add(new Leaf(leaves.size(), rule.get(), "", reason));
            }
        }
        if (problem != null) {
            for (var finding : problem.findings()) {
                var rule = finding.rule();
                if (rule != null
                        && finding.level() == Finding.Level.BLOCK
                        && leaves.stream().noneMatch(leaf -> leaf.rule() == rule)) {
                    leaves.add(new Leaf(leaves.size(), rule, finding.message(), ""));
                }
            }
        }
        return leaves;
    }
}
