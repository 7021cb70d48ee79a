package org.demebook.programme;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import com.fasterxml.jackson.module.paramnames.ParameterNamesModule;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.stream.Stream;
import org.demebook.season.Effort;
import org.demebook.season.YoungToKeep;
import org.jspecify.annotations.Nullable;

/**
 * A season's plan as it was computed. Immutable; once issued it stands in the journal word for word.
 *
 * @param follows the plan whose answers it keeps to; null for the first of a season
 * @param heads the last entry of every journal that it was computed from, by {@code population@node}
 * @param inputDigest SHA-256 of what was computed with, see {@link PlanInput}
 * @param youngKept of each litter, if it succeeds
 * @param chanceOfLitter that a pair has a litter
 * @param curve from most gene diversity to least inbred young
 */
record PlanDocument(
        UUID id,
        @Nullable UUID follows,
        LocalDate pairOn,
        Map<String, Long> heads,
        String inputDigest,
        Work work,
        Exact chanceOfLitter,
        Exact maximumInbreeding,
        Figures figures,
        List<Litter> litters,
        List<Point> curve) {

    /** The journal leaves out what is empty: a plan may have no litter. */
    PlanDocument {
        heads = Objects.requireNonNullElse(heads, Map.of());
        litters = Objects.requireNonNullElse(litters, List.of());
        curve = Objects.requireNonNullElse(curve, List.of());
    }

    /** How much was tried, see {@link Effort}; and how many young were to be spread over the litters, if they were. */
    record Work(
            int boundSteps,
            int starts,
            long moves,
            long seed,
            @Nullable Integer youngInAll,
            @Nullable Integer youngAtMost) {
        static Work of(Effort effort, NewDraft asked) {
            return new Work(
                    effort.boundSteps(),
                    effort.starts(),
                    effort.moves(),
                    effort.seed(),
                    asked.youngInAll(),
                    asked.youngInAll() == null ? null : asked.young());
        }

        /** Null where the numbers of young are given and not to be chosen. */
        @Nullable
        YoungToKeep youngToKeep(int females) {
            return youngInAll == null || youngAtMost == null
                    ? null
                    : new YoungToKeep(Collections.nCopies(females, youngAtMost), OptionalInt.of(youngInAll));
        }

        Effort effort() {
            return new Effort(boundSteps, starts, moves, seed);
        }
    }

    /** As {@link org.demebook.season.SeasonPlan} has them. */
    record Figures(
            Exact now,
            Exact after,
            Exact settledOnly,
            Exact bound,
            Exact meanInbreeding,
            boolean leastInbred,
            boolean whole,
            @Nullable Living living) {
        /** Mean kinship after the season, every living animal counted as one. */
        double afterOfTheLiving() {
            return living == null ? after.value() : living.after.value();
        }
    }

    /** The same with every living animal counted as one, where the plan counts some for less. */
    record Living(Exact now, Exact after) {}

    /**
     * @param young that are reckoned with: a chance times a number
     * @param keep how many young to keep, if they are born
     * @param adds gene diversity that would be missing without it
     * @param ifRefused what is lost if it is not to be; null where that was not computed
     */
    record Litter(
            UUID id,
            UUID damId,
            UUID sireId,
            Exact young,
            int keep,
            Exact inbreeding,
            Exact adds,
            boolean settled,
            @Nullable IfRefused ifRefused) {}

    /** Gene diversity that is lost at most; each null where no plan would be left. */
    record IfRefused(
            @Nullable Exact thisPair,
            @Nullable Exact anyOfHers,
            @Nullable Exact anyOfHis) {}

    record Point(Exact meanKinship, Exact meanInbreeding) {}

    private static final ObjectMapper JSON = JsonMapper.builder()
            .addModule(new JavaTimeModule())
            .addModule(new ParameterNamesModule())
            .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
            .build();

    Optional<Litter> litter(UUID litterId) {
        return litters.stream().filter(litter -> litter.id.equals(litterId)).findFirst();
    }

    static Stream<UUID> animals(PlanDocument plan) {
        return plan.litters.stream().flatMap(litter -> Stream.of(litter.damId, litter.sireId));
    }

    String written() {
        try {
            return JSON.writeValueAsString(this);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    static PlanDocument read(String written) {
        try {
            return JSON.readValue(written, PlanDocument.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
