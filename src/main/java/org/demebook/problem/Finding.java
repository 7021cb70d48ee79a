package org.demebook.problem;

import com.fasterxml.jackson.annotation.JsonProperty;
import org.jspecify.annotations.Nullable;

/**
 * One thing noticed about what was sent. Findings about the same form are collected and told in one answer.
 *
 * @param level an error refuses the whole; a warning is saved with what it is about
 * @param field where: a JSON path such as {@code young[2].sex}, or a column of a sheet; null when it is about the whole
 * @param value what stood there, as it was sent; null when nothing stood there
 * @param message what is wrong and what to do
 */
public record Finding(
        Level level, @Nullable String field, @Nullable String value, String message) {
    public enum Level {
        @JsonProperty("error")
        ERROR,
        @JsonProperty("warning")
        WARNING
    }

    public static Finding error(@Nullable String field, @Nullable Object value, String message) {
        return new Finding(Level.ERROR, field, value == null ? null : value.toString(), message);
    }

    public static Finding warning(@Nullable String field, @Nullable Object value, String message) {
        return new Finding(Level.WARNING, field, value == null ? null : value.toString(), message);
    }
}
