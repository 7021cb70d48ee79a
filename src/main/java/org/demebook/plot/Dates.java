package org.demebook.plot;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Locale;
import java.util.function.Function;

/** Writes days, months and years as the reader is used to. */
public record Dates(
        Function<LocalDate, String> day, Function<LocalDate, String> month, Function<LocalDate, String> year) {

    /** In the words and the order of a language. */
    public static Dates of(Locale locale) {
        return new Dates(
                DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM).withLocale(locale)::format,
                DateTimeFormatter.ofPattern("MMM yyyy", locale)::format,
                DateTimeFormatter.ofPattern("yyyy", locale)::format);
    }
}
