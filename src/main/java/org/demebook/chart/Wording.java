package org.demebook.chart;

/** The words of a chart in its viewer's language; plain text, nothing is escaped in them. */
public interface Wording {
    /** The name of the chart, for example "Ancestry of M-103". */
    String title(String askedName);

    /** What it shows, for example "14 animals in 5 rows, the oldest at the top; the outline says the same in words". */
    String description(int animals, int rows);

    String female();

    String male();

    String sexUnknown();

    String dead();

    String founder();

    /** Who has the arrow, for example "the animal asked about". */
    String asked();

    /** Somebody who is there but not for this viewer, for example "not shown"; short, it stands beside the symbol. */
    String withheld();

    /** A parent that nobody knows, for example "unknown"; short, it stands beside the symbol. */
    String unknownParent();

    String dam();

    String sire();

    /** One of several that it may be. */
    String possibleSire();

    /** What the double line says, for example "parents related". */
    String parentsRelated();

    /** For example "as above". */
    String asAbove();
}
