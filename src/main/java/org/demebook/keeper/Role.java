package org.demebook.keeper;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.Locale;

/** What a keeper is in a population. A coordinator sees what members granted to the role, not everything. */
public enum Role {
    @JsonProperty("member")
    MEMBER,
    @JsonProperty("coordinator")
    COORDINATOR;

    String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    static Role of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }
}
