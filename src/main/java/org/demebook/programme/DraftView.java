package org.demebook.programme;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonValue;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * A plan that a coordinator has computed, and nobody issued.
 *
 * @param state {@code waiting}, {@code computing}, {@code ready}; {@code stopped}: by its coordinator, the best so far is kept;
 *     {@code impossible}: no plan keeps all constraints; {@code failed}: the server's log says why
 * @param progress while it is computed
 * @param plan the best so far, from the moment on when there is one
 * @param contradiction of an impossible season: constraints that contradict each other, and none of which can be left out
 * @param imagined it has animals that do not exist, and cannot be issued
 * @param besideInForce how it differs from the plan in force; absent while there is none
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record DraftView(
        UUID id,

        @Schema(
                implementation = String.class,
                enumeration = {"waiting", "computing", "ready", "stopped", "impossible", "failed"})
        DraftState state,

        Instant startedAt,
        @Nullable ProgressView progress,
        @Nullable SeasonPlanView plan,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> contradiction,
        boolean imagined,
        @Nullable Beside besideInForce) {

    /** What is being done. In JSON lower-case words. */
    public enum Doing {
        /** Looking for the best plan and for what no plan exceeds. */
        PLAN,
        /** Looking for plans of less inbred young. */
        CURVE,
        /** Planning around each refusal. */
        REFUSALS;

        @JsonValue
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * @param doing what is being done
     * @param done steps of that
     * @param of how many there will be at most
     * @param geneDiversity of the best plan so far; absent while there is none
     * @param atBest no plan exceeds it; absent until something is known
     */
    public record ProgressView(
            @Schema(
                    implementation = String.class,
                    enumeration = {"plan", "curve", "refusals"})
            Doing doing,

            long done,
            long of,
            @Nullable Double geneDiversity,
            @Nullable Double atBest) {}

    /**
     * The plan in force, as it was computed when it was issued.
     *
     * @param plan its id
     * @param geneDiversityAfter in [0, 1]
     * @param meanInbreeding of its young, in [0, 1]
     * @param litters how many it has
     * @param onlyHere pairs that the draft has and it has not
     * @param onlyThere pairs that it has and the draft has not
     */
    public record Beside(
            UUID plan,
            double geneDiversityAfter,
            double meanInbreeding,
            int litters,
            List<Both> onlyHere,
            List<Both> onlyThere) {}

    /** Studbook numbers of a pair. */
    public record Both(String dam, String sire) {}
}
