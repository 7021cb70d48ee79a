package org.demebook.programme;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** A double that is written as text, so that it comes back as the same bits: the journal holds no fractions. */
record Exact(double value) {
    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    static Exact of(String written) {
        return new Exact(Double.parseDouble(written));
    }

    @JsonValue
    String written() {
        return Double.toString(value);
    }
}
