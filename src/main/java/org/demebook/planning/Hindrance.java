package org.demebook.planning;

/** What keeps an animal from being paired on a day, the weightiest first: an animal is told one. */
public enum Hindrance {
    /** Somebody said so, or it has no sire, or its locality is in doubt. A coordinator may lift it. */
    ON_HOLD("on-hold"),
    /** Surely too young on the day. */
    TOO_YOUNG("too-young"),
    /** Her last litter is surely not long enough ago on the day. */
    RESTS("rests"),
    /** A test that it needs is missing, does not count on the day, or was not negative. */
    TEST("test");

    private final String word;

    Hindrance(String word) {
        this.word = word;
    }

    /** As it stands in answers. */
    public String word() {
        return word;
    }
}
