package org.demebook.web;

import jakarta.ws.rs.core.NewCookie;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.demebook.notation.Mass;
import org.jspecify.annotations.Nullable;

/**
 * How somebody wants pages to be: chosen on a device and kept there, in a cookie that says nothing about anybody.
 *
 * @param language what pages are written in
 * @param dates how a day is written
 * @param mass in which unit masses are shown and typed
 * @param length in which unit lengths are shown and typed
 * @param appearance light, dark, or as the device has it
 */
public record Preferences(Language language, Dates dates, Mass.Unit mass, LengthUnit length, Appearance appearance) {
    static final String COOKIE = "demebook-preferences";
    private static final int A_YEAR = 365 * 24 * 3600;

    /** A language that every word of the pages is there in. */
    public enum Language {
        EN(Locale.ENGLISH),
        DE(Locale.GERMAN);

        private final Locale locale;

        Language(Locale locale) {
            this.locale = locale;
        }

        public Locale locale() {
            return locale;
        }

        public String code() {
            return locale.getLanguage();
        }
    }

    /** How a day is written: in words, by ISO 8601, or by its numbers with the month first. */
    public enum Dates {
        WORDS,
        ISO,
        MONTH_FIRST
    }

    /** Units of length that pages show. */
    public enum LengthUnit {
        CM,
        IN
    }

    /** Light or dark. */
    public enum Appearance {
        DEVICE,
        LIGHT,
        DARK
    }

    /** The units of mass that may be chosen. */
    public Mass.Unit[] getUnits() {
        return Mass.Unit.values();
    }

    /** What the cookie says; what it does not say, or says wrongly, is as usual, in the best of the accepted languages. */
    static Preferences of(@Nullable String cookie, List<Locale> accepted) {
        var said = cookie == null ? List.<String>of() : List.of(cookie.split("\\."));
        return new Preferences(
                pick(Language.class, said, 0).orElseGet(() -> best(accepted)),
                pick(Dates.class, said, 1).orElse(Dates.WORDS),
                pick(Mass.Unit.class, said, 2).orElse(Mass.Unit.G),
                pick(LengthUnit.class, said, 3).orElse(LengthUnit.CM),
                pick(Appearance.class, said, 4).orElse(Appearance.DEVICE));
    }

    private static <E extends Enum<E>> Optional<E> pick(Class<E> type, List<String> said, int place) {
        return said.size() <= place
                ? Optional.empty()
                : Arrays.stream(type.getEnumConstants())
                        .filter(value -> value.name().equals(said.get(place)))
                        .findFirst();
    }

    private static Language best(List<Locale> accepted) {
        return accepted.stream()
                .flatMap(locale -> Arrays.stream(Language.values())
                        .filter(language -> language.code().equals(locale.getLanguage())))
                .findFirst()
                .orElse(Language.EN);
    }

    NewCookie cookie() {
        return new NewCookie.Builder(COOKIE)
                .value(String.join(".", language.name(), dates.name(), mass.name(), length.name(), appearance.name()))
                .path("/")
                .maxAge(A_YEAR)
                .sameSite(NewCookie.SameSite.LAX)
                .build();
    }
}
