package org.demebook.registry;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.demebook.problem.Finding;
import org.demebook.problem.Finding.Level;
import org.demebook.problem.LeftAsIs;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.problem.Rule;
import org.jspecify.annotations.Nullable;

/**
 * A rule of the register that something breaks, or only strains.
 *
 * @param type of the problem that it is; null for a warning or a notice, which refuse nothing
 */
public record Breach(@Nullable ProblemType type, Finding finding) {
    /** Never saved, and of no rule of the catalogue: the form itself is wrong. */
    public static Breach error(ProblemType type, String field, @Nullable Object value, String message) {
        return new Breach(type, Finding.error(field, value, message));
    }

    /** Never saved: the register could not be computed with it. */
    public static Breach error(
            ProblemType type,
            Rule rule,
            String field,
            @Nullable Object value,
            String message,
            @Nullable String likelier) {
        return new Breach(type, Finding.of(Level.ERROR, rule, field, value, message, likelier));
    }

    /** Refused unless the request leaves it as it is, with a reason. */
    public static Breach block(
            ProblemType type,
            Rule rule,
            String field,
            @Nullable Object value,
            String message,
            @Nullable String likelier) {
        return new Breach(type, Finding.of(Level.BLOCK, rule, field, value, message, likelier));
    }

    /**
     * Saved, and worth a second look.
     *
     * @param likelier which of the facts is likelier wrong, and why; null when nothing speaks for either
     */
    public static Breach warning(
            Rule rule, String field, @Nullable Object value, String message, @Nullable String likelier) {
        return new Breach(null, Finding.of(Level.WARNING, rule, field, value, message, likelier));
    }

    /** Saved, and good to know. */
    public static Breach notice(
            Rule rule, String field, @Nullable Object value, String message, @Nullable String likelier) {
        return new Breach(null, Finding.of(Level.NOTICE, rule, field, value, message, likelier));
    }

    /** The same, found in a part of a form. */
    public Breach within(String part) {
        return new Breach(type, finding.within(part));
    }

    /** The same, told without the value that stood there. */
    public Breach withoutValue() {
        return new Breach(
                type,
                new Finding(
                        finding.level(),
                        finding.rule(),
                        finding.field(),
                        null,
                        finding.message(),
                        finding.why(),
                        finding.likelier()));
    }

    public boolean isError() {
        return finding.level() == Level.ERROR;
    }

    public boolean isLeftBy(List<LeftAsIs> left) {
        return finding.rule() != null
                && finding.level() != Level.ERROR
                && left.stream()
                        .anyMatch(one -> one.rule().equals(finding.rule().word()));
    }

    /**
     * Refuses when one of them is an error, or a block that the request does not leave as it is: told are all of them, the
     * type is that of the first that refuses.
     *
     * @param left what the request leaves as it is; null: nothing
     * @return what is worth telling beside what was saved: warnings and notices that were not left
     */
    public static List<Finding> refuse(List<Breach> breaches, @Nullable List<LeftAsIs> left) {
        var leaves = left == null ? List.<LeftAsIs>of() : left;
        var found = new ArrayList<>(breaches);
        found.addAll(unknownRules(leaves));
        var standing = found.stream().filter(breach -> !breach.isLeftBy(leaves)).toList();
        var findings = standing.stream().map(Breach::finding).toList();
        var refusing = standing.stream().filter(breach -> breach.type() != null).toList();
        if (!refusing.isEmpty()) {
            var detail = refusing.stream()
                    .map(breach -> breach.finding().message())
                    .distinct()
                    .collect(Collectors.joining(" "));
            throw new Refusal(Objects.requireNonNull(refusing.get(0).type()), detail, findings);
        }
        return findings;
    }

    private static List<Breach> unknownRules(List<LeftAsIs> leaves) {
        var breaches = new ArrayList<Breach>();
        for (int i = 0; i < leaves.size(); i++) {
            var word = leaves.get(i).rule();
            if (Rule.of(word).isEmpty()) {
                breaches.add(error(
                        ProblemType.INVALID_VALUES,
                        "leave[%d].rule".formatted(i),
                        word,
                        "There is no rule \"%s\"; write it as the finding does.".formatted(word)));
            }
        }
        return breaches;
    }
}
