package org.demebook.sheet;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Pattern;
import org.demebook.notation.StudbookNumber;
import org.demebook.registry.StatedSire;
import org.demebook.registry.StatedSire.StatedCandidate;
import org.demebook.sheet.Cells.EscapedText;
import org.jspecify.annotations.Nullable;

/**
 * How a sire stands in a cell: {@code A} (known), {@code A|B} or {@code A:0.6|B:0.4} (candidates, each young on its own;
 * equal shares where no probability is given), {@code doubtful A} (known, with low confidence), {@code one of A|B} (one and the same for the whole litter), {@code none},
 * {@code none terminal 0}, {@code none central 0.5} (parthenogenesis). An empty cell, {@code unknown} or {@code ?} says
 * that it is not known.
 *
 * <p>A reference that holds one of {@code | : ; \} is written with a backslash before each; one that reads like a word
 * of this form ({@code none}, {@code one of …}, {@code doubtful …}) with a backslash before the whole.
 */
final class SireText {
    static final String UNKNOWN = "(?i)unknown|\\?";
    private static final Pattern NONE =
            Pattern.compile("none(?:\\s+(terminal|central)(?:\\s+([0-9]+(?:[.,][0-9]+)?))?)?");
    private static final Pattern ONE_OF = Pattern.compile("(?i)one\\s+of\\s+(.+)", Pattern.DOTALL);
    private static final Pattern DOUBTFUL = Pattern.compile("(?i)doubtful\\s+(.+)", Pattern.DOTALL);
    private static final Pattern PROBABILITY = Pattern.compile("[0-9]*(?:[.,][0-9]{1,8})?");
    private static final int DECIMALS_OF_PROBABILITY = 8;
    private static final int DECIMALS_OF_SECOND_DIVISION = 6;

    private SireText() {}

    /**
     * Reads a cell; the animals are as they were written, numbers or references.
     *
     * @return null when it says nothing of the sire
     * @throws IllegalArgumentException with a sentence for the keeper
     */
    static @Nullable StatedSire parse(String cell) {
        if (cell.isEmpty() || cell.matches(UNKNOWN)) {
            return null;
        }
        if (cell.startsWith("\\") && isWord(cell.substring(1))) {
            return males(cell.substring(1), false);
        }
        var lower = cell.toLowerCase(Locale.ROOT);
        var none = NONE.matcher(lower);
        if (none.matches()) {
            return none(none.group(1), none.group(2));
        }
        var doubtful = DOUBTFUL.matcher(cell);
        if (doubtful.matches()) {
            return doubtful(doubtful.group(1));
        }
        var oneOf = ONE_OF.matcher(cell);
        return oneOf.matches() ? males(oneOf.group(1), true) : males(cell, false);
    }

    private static boolean isWord(String text) {
        return text.matches(UNKNOWN)
                || NONE.matcher(text.toLowerCase(Locale.ROOT)).matches()
                || ONE_OF.matcher(text).matches()
                || DOUBTFUL.matcher(text).matches();
    }

    private static StatedSire doubtful(String text) {
        var named = males(text, false).animal();
        if (named == null) {
            throw new IllegalArgumentException(
                    "Doubtful is one male, like \"doubtful A\"; where it may be several, write A|B with their probabilities");
        }
        return StatedSire.doubted(named);
    }

    private static StatedSire none(@Nullable String fusion, @Nullable String share) {
        var second = new BigDecimal(share == null ? "0" : share.replace(',', '.')).stripTrailingZeros();
        if (second.compareTo(BigDecimal.ONE) > 0 || second.scale() > DECIMALS_OF_SECOND_DIVISION) {
            throw new IllegalArgumentException(
                    "The share of second-division segregation is between 0 and 1, with six decimals at most");
        }
        return StatedSire.none(Objects.requireNonNullElse(fusion, "terminal"), second);
    }

    private static StatedSire males(String text, boolean wholeLitter) {
        var parts = EscapedText.split(text, '|');
        if (parts.size() > StatedSire.MOST_CANDIDATES) {
            throw new IllegalArgumentException(
                    "At most %d males can be candidates".formatted(StatedSire.MOST_CANDIDATES));
        }
        var candidates = new ArrayList<StatedCandidate>();
        int withProbability = 0;
        for (var part : parts) {
            var cut = EscapedText.split(part, ':');
            if (cut.size() > 2) {
                throw new IllegalArgumentException(
                        "A male has one probability, like A:0.6; a colon that belongs to a reference is written \\:");
            }
            var animal = EscapedText.unescape(cut.get(0).strip());
            if (animal.isEmpty()) {
                throw new IllegalArgumentException("A male is missing beside a bar; write A|B, or A alone");
            }
            withProbability += cut.size() - 1;
            candidates.add(new StatedCandidate(
                    animal, cut.size() == 2 ? probability(cut.get(1).strip()) : equalShare(parts.size())));
        }
        if (withProbability != 0 && withProbability != candidates.size()) {
            throw new IllegalArgumentException("Give every candidate a probability, or none of them");
        }
        if (candidates.size() == 1 && withProbability == 0 && !wholeLitter) {
            return StatedSire.known(candidates.get(0).animal());
        }
        return StatedSire.candidates(candidates, wholeLitter);
    }

    private static BigDecimal probability(String text) {
        var value = text.isEmpty() || !PROBABILITY.matcher(text).matches()
                ? BigDecimal.ZERO
                : new BigDecimal(text.replace(',', '.')).stripTrailingZeros();
        if (value.signum() <= 0 || value.compareTo(BigDecimal.ONE) > 0) {
            throw new IllegalArgumentException(
                    "After the colon stands the probability, above 0, at most 1, with eight decimals at most, like A:0.6;"
                            + " a colon that belongs to a reference is written \\:");
        }
        return value;
    }

    /** Rounded down: what is left to 1 is an unnamed male, and a hundred-millionth of one does no harm. */
    private static BigDecimal equalShare(int candidates) {
        return BigDecimal.ONE
                .divide(BigDecimal.valueOf(candidates), DECIMALS_OF_PROBABILITY, RoundingMode.DOWN)
                .stripTrailingZeros();
    }

    /** The same back as text; the animals are studbook numbers, likeliest first. */
    static String of(StatedSire sire) {
        return switch (sire.kind()) {
            case "known" -> (sire.inDoubt() ? "doubtful " : "") + Objects.requireNonNull(sire.animal());
            case "candidates" -> candidates(sire);
            case "none" ->
                "none %s %s"
                        .formatted(
                                sire.fusion(),
                                Objects.requireNonNull(sire.secondDivision())
                                        .stripTrailingZeros()
                                        .toPlainString());
            default -> "";
        };
    }

    private static String candidates(StatedSire sire) {
        var candidates = new ArrayList<>(Objects.requireNonNull(sire.candidates()));
        candidates.sort(Comparator.comparing(StatedCandidate::probability)
                .reversed()
                .thenComparing(candidate -> StudbookNumber.parse(candidate.animal())));
        var wholeLitter = Boolean.TRUE.equals(sire.wholeLitter());
        var share = equalShare(candidates.size());
        var equal = (candidates.size() > 1 || wholeLitter)
                && candidates.stream()
                        .allMatch(candidate -> candidate.probability().compareTo(share) == 0);
        List<String> parts = candidates.stream()
                .map(candidate -> equal
                        ? candidate.animal()
                        : candidate.animal() + ":"
                                + candidate.probability().stripTrailingZeros().toPlainString())
                .toList();
        return (wholeLitter ? "one of " : "") + String.join("|", parts);
    }
}
