package org.demebook.breeding;

import java.time.Duration;
import java.time.Instant;

/**
 * Labour that has started and is not noted as finished. Snakes are the reptiles most often affected by dystocia; what is held
 * back has to be treated within 48 hours after labour stops. Source: WikiVet, "Dystocia of reptiles" (abstract). That one
 * looks again after 24 hours is common practice, no source.
 */
record Labour(Instant startedAt) {
    static final Duration LOOK_AGAIN = Duration.ofHours(24);
    static final Duration ACT = Duration.ofHours(48);

    static final String AFTER_A_DAY =
            "Labour has gone on for 24 hours without its end being noted. Note the end if it is over. If she strains in vain, is weak, or has stopped before all are born, see a reptile veterinarian.";
    static final String AFTER_TWO_DAYS =
            "Labour has gone on for 48 hours without its end being noted. What is held back has to be treated within 48 hours after labour stops. Do not press on her and do not wait: see a reptile veterinarian.";

    /** What to do now. */
    String prompt(Instant now) {
        var gone = Duration.between(startedAt, now);
        if (gone.compareTo(ACT) >= 0) {
            return AFTER_TWO_DAYS;
        }
        return gone.compareTo(LOOK_AGAIN) >= 0
                ? AFTER_A_DAY
                : "Labour has started. Leave her in peace and note when it is over; if she strains in vain, is weak, or stops before all are born, see a reptile veterinarian.";
    }
}
