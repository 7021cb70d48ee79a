package org.demebook.problem;

import com.fasterxml.jackson.annotation.JsonProperty;
import org.jspecify.annotations.Nullable;

/**
 * One thing noticed about what was sent. Findings about the same form are collected and told in one answer.
 *
 * @param level how heavy it is
 * @param rule the rule of the catalogue that it breaks or strains; null when it is about the form itself
 * @param field where: a JSON path such as {@code young[2].sex}, or a column of a sheet; null when it is about the whole
 * @param value what stood there, as it was sent; null when nothing stood there
 * @param message what is wrong, with the facts that do not agree, and what to do
 * @param why why it matters; null without a rule
 * @param likelier which of the facts is likelier wrong, and why; null when nothing speaks for either
 */
public record Finding(
        Level level,
        @Nullable Rule rule,
        @Nullable String field,
        @Nullable String value,
        String message,
        @Nullable String why,
        @Nullable String likelier) {
    /** How heavy a finding is, the heaviest first. */
    public enum Level {
        /** Refused, whatever is said. */
        @JsonProperty("error")
        ERROR,
        /** Refused unless it is left as it is, with a reason. */
        @JsonProperty("block")
        BLOCK,
        /** Saved, and worth a second look. */
        @JsonProperty("warning")
        WARNING,
        /** Saved, and good to know. */
        @JsonProperty("notice")
        NOTICE
    }

    public static Finding error(@Nullable String field, @Nullable Object value, String message) {
        return new Finding(Level.ERROR, null, field, text(value), message, null, null);
    }

    /** A finding about a rule of the catalogue; why it matters is the rule's. */
    public static Finding of(
            Level level,
            Rule rule,
            @Nullable String field,
            @Nullable Object value,
            String message,
            @Nullable String likelier) {
        return new Finding(level, rule, field, text(value), message, rule.why(), likelier);
    }

    /** The same, found in a part of a form. */
    public Finding within(String part) {
        return new Finding(level, rule, field == null ? part : part + "." + field, value, message, why, likelier);
    }

    private static @Nullable String text(@Nullable Object value) {
        return value == null ? null : value.toString();
    }
}
