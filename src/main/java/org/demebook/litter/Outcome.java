package org.demebook.litter;

import static org.demebook.problem.ProblemType.LITTER_DOES_NOT_ADD_UP;

import jakarta.persistence.Embeddable;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.demebook.problem.Rule;
import org.demebook.registry.Breach;
import org.jspecify.annotations.Nullable;

/**
 * What became of the ova of a litter. Four classes share them out: live-born, stillborn, part-developed and unfertilised
 * together are the ova found. The malformed are counted within the live-born and the stillborn, the infertile and the
 * early dead within the unfertilised.
 *
 * @param liveBorn all that were alive, the malformed ones included; each is an animal of the register
 * @param malformedLive how many of the live-born are malformed; nothing for none
 * @param stillborn full-term and dead, in or out of the sac, the malformed ones included
 * @param malformedStillborn how many of the stillborn are malformed; nothing for none
 * @param partDeveloped an embryo is seen, not full-term, dead in its sac; nothing for none
 * @param unfertilised slugs: ova in which no embryo is seen
 * @param infertile how many of the unfertilised never began; nothing for none
 * @param earlyDead how many of the unfertilised died early, such as those with veins; nothing for none. What is in neither
 *     of the two nobody has told apart
 * @param ovaFound everything that was found
 */
@Embeddable
public record Outcome(
        @NotNull @Min(0) @Max(NewLitter.MOST) Integer liveBorn,
        @Nullable @Min(0) @Max(NewLitter.MOST) Integer malformedLive,
        @NotNull @Min(0) @Max(NewLitter.MOST) Integer stillborn,
        @Nullable @Min(0) @Max(NewLitter.MOST) Integer malformedStillborn,
        @Nullable @Min(0) @Max(NewLitter.MOST) Integer partDeveloped,
        @NotNull @Min(0) @Max(NewLitter.MOST) Integer unfertilised,
        @Nullable @Min(0) @Max(NewLitter.MOST) Integer infertile,
        @Nullable @Min(0) @Max(NewLitter.MOST) Integer earlyDead,
        @NotNull @Min(1) @Max(NewLitter.MOST) Integer ovaFound) {
    public Outcome {
        malformedLive = Objects.requireNonNullElse(malformedLive, 0);
        malformedStillborn = Objects.requireNonNullElse(malformedStillborn, 0);
        partDeveloped = Objects.requireNonNullElse(partDeveloped, 0);
        infertile = Objects.requireNonNullElse(infertile, 0);
        earlyDead = Objects.requireNonNullElse(earlyDead, 0);
    }

    /** What does not add up, saying how many are missing or too many. */
    List<Breach> breaches() {
        var breaches = new ArrayList<Breach>();
        int sum = liveBorn + stillborn + partDeveloped + unfertilised;
        if (sum != ovaFound) {
            int off = Math.abs(ovaFound - sum);
            breaches.add(Breach.error(
                    LITTER_DOES_NOT_ADD_UP,
                    Rule.LITTER_DOES_NOT_ADD_UP,
                    "ovaFound",
                    ovaFound,
                    "%d found, the classes add to %d (%s): %s %s. Which?"
                            .formatted(
                                    ovaFound,
                                    sum,
                                    classes(),
                                    off == 1 ? "one" : off,
                                    sum < ovaFound ? "missing" : "too many"),
                    null));
        }
        requireWithin("malformedLive", malformedLive, "malformed", "live-born", liveBorn, breaches);
        requireWithin("malformedStillborn", malformedStillborn, "malformed", "stillborn", stillborn, breaches);
        requireWithin(
                "unfertilised",
                infertile + earlyDead,
                "infertile or early dead",
                "unfertilised",
                unfertilised,
                breaches);
        return breaches;
    }

    private String classes() {
        return "%d live-born, %d stillborn, %d part-developed, %d unfertilised"
                .formatted(liveBorn, stillborn, partDeveloped, unfertilised);
    }

    private static void requireWithin(
            String field, int part, String kind, String whole, int count, List<Breach> breaches) {
        if (part > count) {
            breaches.add(Breach.error(
                    LITTER_DOES_NOT_ADD_UP,
                    Rule.LITTER_DOES_NOT_ADD_UP,
                    field,
                    part,
                    "%d of the %s are %s, but there are only %d %s: %d too many."
                            .formatted(part, whole, kind, count, whole, part - count),
                    null));
        }
    }
}
