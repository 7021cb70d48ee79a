package org.demebook.chart;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A chart in words: each animal with its parents below it, once in full, afterwards as a reference to the place above.
 *
 * @param roots the animal asked about first, then whoever else has no young in the chart
 */
public record Outline(List<Entry> roots) {
    /**
     * A place in the outline.
     *
     * @param role dam, sire or possible sire, in words; empty at a root
     * @param name its first line, or the words for somebody withheld or unknown
     * @param details sex, further lines, whether dead, founder, or of related parents, in words
     * @param asAbove in words, where it stands in full above, and nothing else is said of it here; empty where it is in full
     * @param link its page, or null
     * @param parents its dam, then its sire or those it may be
     */
    public record Entry(
            String role,
            String name,
            List<String> details,
            String asAbove,
            @Nullable String link,
            List<Entry> parents) {
        public Entry {
            details = List.copyOf(details);
            parents = List.copyOf(parents);
        }

        public boolean inFull() {
            return asAbove.isEmpty();
        }
    }

    public Outline {
        roots = List.copyOf(roots);
    }

    /** The outline as plain text, a line for each place, two spaces deeper for each generation. */
    public String toText() {
        var text = new StringBuilder();
        roots.forEach(root -> append(root, 0, text));
        return text.toString();
    }

    private static void append(Entry entry, int depth, StringBuilder text) {
        text.append("  ".repeat(depth));
        if (!entry.role().isEmpty()) {
            text.append(entry.role()).append(": ");
        }
        text.append(onOneLine(entry.name()));
        entry.details().forEach(detail -> text.append(", ").append(onOneLine(detail)));
        if (!entry.inFull()) {
            text.append(" (").append(entry.asAbove()).append(')');
        }
        text.append('\n');
        entry.parents().forEach(parent -> append(parent, depth + 1, text));
    }

    private static String onOneLine(String words) {
        return words.replaceAll("\\p{Cntrl}+|[\\u2028\\u2029]", " ");
    }
}
