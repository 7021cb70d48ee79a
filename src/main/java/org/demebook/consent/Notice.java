package org.demebook.consent;

import java.time.Instant;
import java.time.Period;
import java.time.ZoneOffset;

/** What keepers are told before they consent; whoever changes the text changes the version. */
public final class Notice {
    public static final String VERSION = "2026-11";
    static final String LANGUAGE = "en";
    static final String PATH = "/api/v1/consent-notice";

    public static final String TEXT = """
            You decide what others see of your animals, and for what. Nothing is shown, computed with, passed on or counted \
            unless you grant it. A grant says to whom, which parts of your records, for which purposes, what may be done with \
            them, and until when: at most 24 months, then you are asked again. You may withdraw it at any moment, as easily as \
            you gave it, and need give no reason; from that moment on nothing more is shown on it. What somebody read before \
            cannot be unread, and counts that were published stay published. Of an animal that two of you have a say in, \
            nothing is shown unless both have granted it. You can read who saw what, when, and on which of your grants. \
            Grants and withdrawals are kept in the journal of the population, without names. This is control over what is \
            shown; it is not anonymity: who knows your animals may recognise them.""";

    private static final Period LONGEST = Period.ofMonths(24);

    private Notice() {}

    /** The last moment to which a grant that is given now may reach. */
    static Instant latestEnd(Instant now) {
        return now.atZone(ZoneOffset.UTC).plus(LONGEST).toInstant();
    }
}
