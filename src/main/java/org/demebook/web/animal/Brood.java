package org.demebook.web.animal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import org.demebook.ancestry.YoungView;
import org.demebook.notation.RoughDate;
import org.jspecify.annotations.Nullable;

/**
 * Young of one birth.
 *
 * @param born null where it is not known
 * @param otherParent its studbook number; null where it is not known, or not told
 */
public record Brood(@Nullable RoughDate born, @Nullable String otherParent, boolean certain, List<YoungView> young) {

    private record Birth(@Nullable String born, @Nullable String otherParent, boolean certain) {}

    /** The latest birth first. */
    static List<Brood> of(List<YoungView> young) {
        var births = new LinkedHashMap<Birth, List<YoungView>>();
        for (var one : young) {
            births.computeIfAbsent(new Birth(one.born(), one.otherParent(), one.certain()), birth -> new ArrayList<>())
                    .add(one);
        }
        var broods = new ArrayList<Brood>();
        births.forEach((birth, of) -> broods.add(
                0,
                new Brood(
                        birth.born() == null ? null : RoughDate.parse(birth.born()),
                        birth.otherParent(),
                        birth.certain(),
                        of)));
        return broods;
    }
}
