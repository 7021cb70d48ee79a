package org.demebook.gestation;

import com.fasterxml.jackson.annotation.JsonValue;
import org.demebook.taxon.TaxonProfile.Breeding;

/**
 * How well a male's last meeting with the dam agrees with the conception.
 *
 * <p>Source: Levine, Schuett &amp; Booth (2021), PLoS ONE 16: e0252049 (abstract): healthy young 71 months after the last
 * mating, the longest that is published of a vertebrate; up to a year in general texts on boas.
 */
public enum Grade {
    IN_TIME("in time"),
    STORED_SPERM("stored sperm"),
    RARE("rare"),
    BEYOND("beyond every published case");

    private final String words;

    Grade(String words) {
        this.words = words;
    }

    @JsonValue
    public String words() {
        return words;
    }

    /** @param days from the last possible meeting to the conception; 0 or less when they were together then */
    public static Grade of(long days, Breeding profile) {
        if (days <= 0) {
            return IN_TIME;
        }
        if (days <= profile.daysOfSpermStorageUsual()) {
            return STORED_SPERM;
        }
        return days <= profile.daysOfSpermStorage() ? RARE : BEYOND;
    }
}
