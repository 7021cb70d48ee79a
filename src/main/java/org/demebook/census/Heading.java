package org.demebook.census;

import org.demebook.census.CountReleaseView.Cell;
import org.demebook.disclosure.Figure;
import org.jspecify.annotations.Nullable;

/**
 * What a count is of: a sex, an age class, when born and where, each of them {@code all} where it is not looked at. Regions are
 * not crossed with the others.
 *
 * @param age an age class, or {@code immature}: young and juvenile
 * @param born a decade ({@code 2010s}), {@code before 2010}, or {@code unknown}
 * @param region one of the association's, or {@code not stated}
 */
record Heading(String sex, String age, String born, String region) {
    static final String ALL = "all";
    static final String UNKNOWN = "unknown";
    static final String NOT_STATED = "not stated";
    static final String IMMATURE = "immature";

    /** Everything that is counted. */
    static final Heading EVERYTHING = new Heading(ALL, ALL, ALL, ALL);

    private static final String BEFORE = "before ";

    /** What a published cell is of; before there were decades of birth, and regions, cells said nothing of them. */
    static Heading of(Cell cell) {
        return new Heading(cell.sex(), cell.age(), orAll(cell.born()), orAll(cell.region()));
    }

    private static String orAll(@Nullable String word) {
        return word == null ? ALL : word;
    }

    static String baseCell(String sex, String age, String born) {
        return sex + "·" + age + "·" + born;
    }

    static String baseCell(String region) {
        return "region·" + region;
    }

    static String decade(int year) {
        return year / 10 * 10 + "s";
    }

    static String before(int year) {
        return BEFORE + year;
    }

    Figure figure() {
        return new Figure(isRegion() ? baseCell(region) : baseCell(sex, age, born), this::covers);
    }

    private boolean covers(String baseCell) {
        if (isRegion()) {
            return baseCell.equals(baseCell(region));
        }
        var parts = baseCell.split("·");
        return parts.length == 3
                && (sex.equals(ALL) || sex.equals(parts[0]))
                && coversAge(parts[1])
                && coversBirth(parts[2]);
    }

    private boolean coversAge(String word) {
        return switch (age) {
            case ALL -> true;
            case IMMATURE -> word.equals(AgeClass.YOUNG.word()) || word.equals(AgeClass.JUVENILE.word());
            default -> age.equals(word);
        };
    }

    private boolean coversBirth(String decade) {
        if (born.startsWith(BEFORE)) {
            return !decade.equals(UNKNOWN) && year(decade) < Integer.parseInt(born.substring(BEFORE.length()));
        }
        return born.equals(ALL) || born.equals(decade);
    }

    static int year(String decade) {
        return Integer.parseInt(decade.substring(0, decade.length() - 1));
    }

    /** A cell of the table of sexes by age classes, without totals. */
    boolean isInner() {
        return !sex.equals(ALL) && !age.equals(ALL);
    }

    /** A cell of the table of regions. */
    boolean isRegion() {
        return !region.equals(ALL);
    }

    Cell told(int count) {
        return new Cell(sex, age, born, region, count, null, null, null);
    }

    Cell withheld(long lowest, @Nullable Long highest, String why) {
        return new Cell(sex, age, born, region, null, (int) lowest, highest == null ? null : highest.intValue(), why);
    }
}
