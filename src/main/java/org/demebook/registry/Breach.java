package org.demebook.registry;

import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.demebook.problem.Finding;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.jspecify.annotations.Nullable;

/**
 * A rule of the register that something breaks, or only strains.
 *
 * @param type of the problem that it is; null for a warning, which refuses nothing
 */
public record Breach(@Nullable ProblemType type, Finding finding) {
    public static Breach error(ProblemType type, String field, @Nullable Object value, String message) {
        return new Breach(type, Finding.error(field, value, message));
    }

    public static Breach warning(String field, @Nullable Object value, String message) {
        return new Breach(null, Finding.warning(field, value, message));
    }

    /** The same, found in a part of a form. */
    Breach within(String part) {
        return new Breach(
                type, new Finding(finding.level(), part + "." + finding.field(), finding.value(), finding.message()));
    }

    public boolean isError() {
        return type != null;
    }

    /** Refuses when one of them is an error, telling all of them; the type is that of the first error. */
    public static List<Finding> refuseErrors(List<Breach> breaches) {
        var findings = breaches.stream().map(Breach::finding).toList();
        breaches.stream().filter(Breach::isError).findFirst().ifPresent(first -> {
            var detail = breaches.stream()
                    .filter(Breach::isError)
                    .map(breach -> breach.finding().message())
                    .distinct()
                    .collect(Collectors.joining(" "));
            throw new Refusal(Objects.requireNonNull(first.type()), detail, findings);
        });
        return findings;
    }
}
