package org.demebook.chart;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An animal of the chart, as far as its viewer may know it.
 *
 * @param key names it within the chart; not shown
 * @param lines what stands beside it, at most three lines: its number, then for example its year; each is cut after some twenty letters, and whole in
 *     the outline. Empty: the words for what it is (withheld, unknown)
 * @param sex decides the symbol; unknown also where the viewer may not know it
 * @param sight whether it is shown, withheld, or unknown to the register
 * @param dead slashed
 * @param founder thick outline
 * @param asked the animal whose chart this is: it has the arrow
 * @param dam its dam's key; null: no dam is drawn (unknown, or beyond the depth of this chart)
 * @param sires its sire, or all that it may be; empty: none is drawn
 * @param sireCertain false: each of the sires is a candidate, drawn dashed
 * @param link where its page is, a path on this server; null: it leads nowhere
 */
public record Figure(
        String key,
        List<String> lines,
        Sex sex,
        Sight sight,
        boolean dead,
        boolean founder,
        boolean asked,
        @Nullable String dam,
        List<SireLink> sires,
        boolean sireCertain,
        @Nullable String link) {

    /** What decides the symbol: square, circle, diamond. */
    public enum Sex {
        MALE,
        FEMALE,
        UNKNOWN
    }

    /** What the viewer may know of it. */
    public enum Sight {
        /** Shown. */
        SHOWN,
        /** It is in the register, and its keeper does not show it to this viewer. */
        WITHHELD,
        /** A parent that there was and that nobody knows. */
        UNKNOWN
    }

    /**
     * A sire, or one that may be.
     *
     * @param key the key of its figure
     * @param relatedToDam the kinship of this sire and the dam is above 0: the couple has a double line
     */
    public record SireLink(String key, boolean relatedToDam) {}

    public Figure {
        lines = List.copyOf(lines);
        sires = List.copyOf(sires);
        if (lines.size() > 3) {
            throw new IllegalArgumentException(
                    "%s has %d lines of text; a figure has room for 3".formatted(key, lines.size()));
        }
        if (sireCertain && sires.size() > 1) {
            throw new IllegalArgumentException("%s has %d certain sires".formatted(key, sires.size()));
        }
        if (link != null && (!link.startsWith("/") || link.startsWith("//") || link.startsWith("/\\"))) {
            throw new IllegalArgumentException("The link of %s leads out of this server: %s".formatted(key, link));
        }
    }

    /** A shown, living animal without parents; more is said with {@code with…} and {@code as…}. */
    public static Figure of(String key, Sex sex, String... lines) {
        return new Figure(key, List.of(lines), sex, Sight.SHOWN, false, false, false, null, List.of(), true, null);
    }

    /** An ancestor that is there but not for this viewer. */
    public static Figure withheld(String key, Sex sex) {
        return new Figure(key, List.of(), sex, Sight.WITHHELD, false, false, false, null, List.of(), true, null);
    }

    /** A parent that nobody knows. */
    public static Figure unknown(String key, Sex sex) {
        return new Figure(key, List.of(), sex, Sight.UNKNOWN, false, false, false, null, List.of(), true, null);
    }

    public Figure asDead() {
        return new Figure(key, lines, sex, sight, true, founder, asked, dam, sires, sireCertain, link);
    }

    public Figure asFounder() {
        return new Figure(key, lines, sex, sight, dead, true, asked, dam, sires, sireCertain, link);
    }

    public Figure asAsked() {
        return new Figure(key, lines, sex, sight, dead, founder, true, dam, sires, sireCertain, link);
    }

    public Figure withLink(String path) {
        return new Figure(key, lines, sex, sight, dead, founder, asked, dam, sires, sireCertain, path);
    }

    /** @param related the kinship of the two is above 0 */
    public Figure withParents(@Nullable String damKey, @Nullable String sireKey, boolean related) {
        var sire = sireKey == null ? List.<SireLink>of() : List.of(new SireLink(sireKey, related));
        return new Figure(key, lines, sex, sight, dead, founder, asked, damKey, sire, true, link);
    }

    /** Any of the candidates may be the sire. */
    public Figure withPossibleSires(@Nullable String damKey, List<SireLink> candidates) {
        return new Figure(key, lines, sex, sight, dead, founder, asked, damKey, candidates, false, link);
    }
}
