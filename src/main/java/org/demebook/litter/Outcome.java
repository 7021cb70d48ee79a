package org.demebook.litter;

import static org.demebook.problem.ProblemType.LITTER_DOES_NOT_ADD_UP;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.demebook.registry.Breach;
import org.jspecify.annotations.Nullable;

/**
 * What became of the ova of a litter. Live-born, stillborn and unfertilised together are the ova found.
 *
 * @param liveBorn all that were alive, the malformed ones included
 * @param malformedLive nothing for none
 * @param malformedStillborn nothing for none
 */
public record Outcome(
        @NotNull @Min(0) @Max(NewLitter.MOST) Integer liveBorn,
        @NotNull @Min(0) @Max(NewLitter.MOST) Integer stillborn,
        @NotNull @Min(0) @Max(NewLitter.MOST) Integer unfertilised,
        @NotNull @Min(1) @Max(NewLitter.MOST) Integer ovaFound,
        @Nullable @Min(0) @Max(NewLitter.MOST) Integer malformedLive,
        @Nullable @Min(0) @Max(NewLitter.MOST) Integer malformedStillborn) {
    public Outcome {
        malformedLive = Objects.requireNonNullElse(malformedLive, 0);
        malformedStillborn = Objects.requireNonNullElse(malformedStillborn, 0);
    }

    /** What does not add up, saying how many are missing or too many. */
    List<Breach> breaches() {
        var breaches = new ArrayList<Breach>();
        int sum = liveBorn + stillborn + unfertilised;
        if (sum != ovaFound) {
            int off = Math.abs(ovaFound - sum);
            breaches.add(Breach.error(
                    LITTER_DOES_NOT_ADD_UP,
                    "ovaFound",
                    ovaFound,
                    "%d live-born, %d stillborn and %d unfertilised make %d, but %d ova were found: %d %s; which?"
                            .formatted(
                                    liveBorn,
                                    stillborn,
                                    unfertilised,
                                    sum,
                                    ovaFound,
                                    off,
                                    sum < ovaFound
                                            ? off == 1 ? "is missing" : "are missing"
                                            : off == 1 ? "is too many" : "are too many")));
        }
        requireWithin("malformedLive", malformedLive, "live-born", liveBorn, breaches);
        requireWithin("malformedStillborn", malformedStillborn, "stillborn", stillborn, breaches);
        return breaches;
    }

    private static void requireWithin(String field, int malformed, String whole, int count, List<Breach> breaches) {
        if (malformed > count) {
            breaches.add(Breach.error(
                    LITTER_DOES_NOT_ADD_UP,
                    field,
                    malformed,
                    "%d of the %s are malformed, but there are only %d %s: %d too many."
                            .formatted(malformed, whole, count, whole, malformed - count)));
        }
    }
}
