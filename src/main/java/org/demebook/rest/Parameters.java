package org.demebook.rest;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;

import jakarta.ws.rs.ext.ParamConverter;
import jakarta.ws.rs.ext.ParamConverterProvider;
import jakarta.ws.rs.ext.Provider;
import java.lang.annotation.Annotation;
import java.lang.reflect.Type;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import org.demebook.problem.Refusal;
import org.jspecify.annotations.Nullable;

/** Parameters of an address: one that cannot be read is a problem that says so, where the framework would answer 404. */
@Provider
public class Parameters implements ParamConverterProvider {
    private static final Map<Class<?>, Function<String, Object>> READERS = Map.of(
            Integer.class, Integer::valueOf,
            Long.class, Long::valueOf,
            UUID.class, UUID::fromString,
            LocalDate.class, LocalDate::parse,
            Boolean.class, Parameters::bool);
    private static final Map<Class<?>, String> EXPECTED = Map.of(
            Integer.class, "a whole number",
            Long.class, "a whole number",
            UUID.class, "an id such as 01890a5d-ac96-774b-bcce-b302099a8057",
            LocalDate.class, "a day such as 2026-06-29",
            Boolean.class, "true or false");

    /**
     * A word of a list, such as a state; null when nothing is said.
     *
     * @param parse throws IllegalArgumentException with the words that there are
     */
    public static <T> @Nullable T word(String name, @Nullable String word, Function<String, T> parse) {
        try {
            return word == null ? null : parse.apply(word);
        } catch (IllegalArgumentException e) {
            throw new Refusal(BAD_PARAMETER, "%s=%s: %s.".formatted(name, word, e.getMessage()));
        }
    }

    @Override
    @SuppressWarnings("unchecked")
    public <T> @Nullable ParamConverter<T> getConverter(Class<T> type, Type generic, Annotation[] annotations) {
        var reader = READERS.get(type);
        return reader == null ? null : (ParamConverter<T>) new Converter(reader, EXPECTED.get(type));
    }

    private static Object bool(String text) {
        return switch (text) {
            case "true" -> true;
            case "false" -> false;
            default -> throw new IllegalArgumentException();
        };
    }

    private record Converter(Function<String, Object> reader, String expected) implements ParamConverter<Object> {
        @Override
        public @Nullable Object fromString(@Nullable String text) {
            if (text == null) {
                return null;
            }
            try {
                return reader.apply(text);
            } catch (IllegalArgumentException | DateTimeParseException e) {
                throw new Refusal(BAD_PARAMETER, "\"%s\" is not %s.".formatted(text, expected));
            }
        }

        @Override
        public String toString(Object value) {
            return value.toString();
        }
    }
}
