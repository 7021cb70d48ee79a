package org.demebook.taxon;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** Which sex chromosomes decide, where that is known: it says what sex fatherless young would have. */
public enum SexSystem {
    /** Fatherless young are female: <i>Boa imperator</i>, Gamble et al. (2017), Curr. Biol. 27: 2148 (abstract). */
    XX_XY,
    /** Fatherless young are male: some other boas, 2018–2019 (abstracts). */
    ZZ_ZW,
    UNKNOWN;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static SexSystem parse(String word) {
        return switch (word.strip().toLowerCase(Locale.ROOT)) {
            case "xx-xy" -> XX_XY;
            case "zz-zw" -> ZZ_ZW;
            case "unknown" -> UNKNOWN;
            default -> throw new IllegalArgumentException("Write xx-xy, zz-zw or unknown");
        };
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
