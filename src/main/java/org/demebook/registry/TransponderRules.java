package org.demebook.registry;

import static org.demebook.problem.ProblemType.TRANSPONDER_TAKEN;

import java.util.Objects;
import org.demebook.notation.Transponder;
import org.demebook.problem.Rule;
import org.jspecify.annotations.Nullable;

/** What is said of a transponder that stands with another living animal, or nearly so. */
public final class TransponderRules {
    private static final String NOT_SEEN =
            "an animal that is not shown to you (its number stands on its hand-over sheet)";

    private TransponderRules() {}

    /** @param animal that carries it already, as the keeper knows it; null where they may not see it */
    public static Breach taken(Transponder transponder, @Nullable String animal) {
        return Breach.block(
                TRANSPONDER_TAKEN,
                Rule.TRANSPONDER_TAKEN,
                "transponders",
                transponder,
                transponder.carriedBy(Objects.requireNonNullElse(animal, NOT_SEEN)),
                "The new record: one animal that is registered twice is commoner than two chips with one code.");
    }

    /** @param other what the animal carries: one digit, or two neighbours swapped, away */
    public static Breach near(Transponder transponder, String other, String animal) {
        return Breach.warning(
                Rule.TRANSPONDER_NEIGHBOUR,
                "transponders",
                transponder,
                transponder.nearTo(other, animal),
                "The code that was typed by hand, and not scanned.");
    }
}
