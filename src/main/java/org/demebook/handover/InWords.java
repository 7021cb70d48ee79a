package org.demebook.handover;

import static java.util.stream.Collectors.joining;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.demebook.handover.HandoverSheet.Measures;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.registry.StatedSire;
import org.jspecify.annotations.Nullable;

/** What the register holds as values, as a keeper would say it. */
final class InWords {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMMM uuuu", Locale.ENGLISH);

    private InWords() {}

    static String day(LocalDate day) {
        return DAY.format(day);
    }

    static String born(@Nullable RoughDate born) {
        if (born == null) {
            return "unknown";
        }
        return switch (born.precision()) {
            case DAY -> day(earliest(born));
            case MONTH -> MONTH.format(earliest(born)) + " (the day is not known)";
            case YEAR -> earliest(born).getYear() + " (the month is not known)";
            case BEFORE -> "on or before " + day(Objects.requireNonNull(born.latest()));
            case AFTER -> "on or after " + day(earliest(born));
        };
    }

    private static LocalDate earliest(RoughDate date) {
        return Objects.requireNonNull(date.earliest());
    }

    static String sex(Sex sex) {
        return switch (sex) {
            case FEMALE -> "♀ female";
            case MALE -> "♂ male";
            case UNKNOWN -> "unknown";
        };
    }

    static String dam(@Nullable String number) {
        return Objects.requireNonNullElse(number, "unknown");
    }

    static String sire(StatedSire sire) {
        return switch (sire.kind()) {
            case "known" -> sire.animal() + (sire.inDoubt() ? " (doubtful)" : "");
            case "candidates" -> "uncertain: " + candidates(sire);
            case "none" -> "none: young of the dam alone (parthenogenesis)";
            default -> "unknown";
        };
    }

    private static String candidates(StatedSire sire) {
        var named = Objects.requireNonNull(sire.candidates());
        var left = named.stream()
                .map(StatedSire.StatedCandidate::probability)
                .reduce(BigDecimal.ONE, BigDecimal::subtract);
        return named.stream()
                        .map(candidate -> "%s (%s)".formatted(candidate.animal(), percent(candidate.probability())))
                        .collect(joining(" or "))
                + (left.signum() > 0 ? " or a male not named (%s)".formatted(percent(left)) : "");
    }

    static String percent(double share) {
        return percent(BigDecimal.valueOf(share));
    }

    /** To a tenth of a percent. */
    static String percent(BigDecimal share) {
        return share.movePointRight(2)
                        .setScale(1, RoundingMode.HALF_EVEN)
                        .stripTrailingZeros()
                        .toPlainString()
                + " %";
    }

    /** An inbreeding coefficient, to four places. */
    static String coefficient(double value) {
        return BigDecimal.valueOf(value)
                .setScale(4, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }

    static String measures(@Nullable Measures measures) {
        if (measures == null) {
            return "none";
        }
        var parts = new StringBuilder();
        if (measures.massGrams() != null) {
            parts.append(measures.massGrams().toPlainString()).append(" g");
        }
        if (measures.lengthMillimetres() != null) {
            parts.append(parts.isEmpty() ? "" : ", ")
                    .append(BigDecimal.valueOf(measures.lengthMillimetres(), 1)
                            .stripTrailingZeros()
                            .toPlainString())
                    .append(" cm")
                    .append(measures.lengthKind() == null ? "" : " " + measures.lengthKind());
        }
        return parts + " on " + day(measures.on());
    }

    static String list(List<String> words, String ifNone) {
        return words.isEmpty() ? ifNone : String.join("; ", words);
    }
}
