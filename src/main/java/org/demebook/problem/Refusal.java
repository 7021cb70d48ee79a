package org.demebook.problem;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** The server will not do it, and says why in a sentence that the keeper can act on. Nothing was changed. */
public final class Refusal extends RuntimeException {
    private final transient ProblemType type;
    private final transient List<Finding> findings;

    public Refusal(ProblemType type, String detail) {
        this(type, detail, List.of());
    }

    public Refusal(ProblemType type, String detail, List<Finding> findings) {
        this(type, detail, findings, null);
    }

    public Refusal(ProblemType type, String detail, List<Finding> findings, @Nullable Throwable cause) {
        super(detail, cause, false, false);
        this.type = type;
        this.findings = List.copyOf(findings);
    }

    public ProblemType type() {
        return type;
    }

    public String detail() {
        return String.valueOf(getMessage());
    }

    public List<Finding> findings() {
        return findings;
    }

    public Problem problem() {
        return new Problem(type.uri(), type.title(), type.status(), detail(), findings);
    }
}
