package org.demebook.census;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.demebook.keeper.Standing;
import org.demebook.problem.Problem;
import org.jspecify.annotations.Nullable;

/** A release of counts in the making: on its way, released, or refused with the reason. Seen by the coordinator who asked for it. */
public final class CountPreparation {
    /** How far it is. */
    public enum Stage {
        /** Others are prepared before it. */
        WAITING,
        /** Animals are counted, what is withheld is chosen, and the choice is audited together with all earlier releases. */
        COUNTING,
        /** It passed, and is written down. */
        RELEASING,
        RELEASED,
        /** Nothing was released. */
        REFUSED,
        /** Nothing was released, and nobody knows why. */
        FAILED;

        public boolean isOver() {
            return compareTo(RELEASED) >= 0;
        }
    }

    private final UUID id;
    final Standing by;
    private final LocalDate countedOn;
    private final Instant startedAt;
    private volatile Stage stage = Stage.WAITING;
    private volatile @Nullable Problem problem;

    CountPreparation(UUID id, Standing by, LocalDate countedOn, Instant startedAt) {
        this.id = id;
        this.by = by;
        this.countedOn = countedOn;
        this.startedAt = startedAt;
    }

    void is(Stage reached) {
        stage = reached;
    }

    void isRefused(Problem why) {
        problem = why;
        stage = Stage.REFUSED;
    }

    public UUID id() {
        return id;
    }

    public LocalDate countedOn() {
        return countedOn;
    }

    public Instant startedAt() {
        return startedAt;
    }

    public Stage stage() {
        return stage;
    }

    /** Absent unless it is refused. */
    public @Nullable Problem problem() {
        return problem;
    }
}
