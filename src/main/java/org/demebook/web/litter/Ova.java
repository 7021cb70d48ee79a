package org.demebook.web.litter;

import java.util.ArrayList;
import java.util.List;
import org.demebook.litter.LitterView;

/**
 * A litter drawn ovum by ovum, by what became of each.
 *
 * @param signs the class by which each is drawn
 */
public record Ova(LitterView litter, List<String> signs) {
    public static Ova of(LitterView litter) {
        var signs = new ArrayList<String>();
        add(signs, "live", litter.liveBorn() - litter.malformedLive());
        add(signs, "live malformed", litter.malformedLive());
        add(signs, "stillborn", litter.stillborn());
        add(signs, "part", litter.partDeveloped());
        add(signs, "slug", litter.unfertilised());
        return new Ova(litter, signs);
    }

    private static void add(List<String> signs, String sign, int count) {
        for (int i = 0; i < count; i++) {
            signs.add(sign);
        }
    }
}
