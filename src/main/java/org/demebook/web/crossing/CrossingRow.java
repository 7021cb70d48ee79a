package org.demebook.web.crossing;

import java.time.LocalDate;
import org.demebook.crossing.CrossingState;
import org.demebook.crossing.CrossingView;
import org.jspecify.annotations.Nullable;

/**
 * A crossing as a page tells it.
 *
 * @param inWords where it stands, for the one who looks
 * @param heard when the other node was last heard of, in words; null once nothing is to come
 * @param until the last day on which it can be accepted
 */
public record CrossingRow(
        CrossingView crossing, String inWords, @Nullable String heard, LocalDate until) {
    /** Whether the one who looks is to answer. */
    public boolean isWaiting() {
        return !crossing.given() && crossing.state() == CrossingState.OFFERED;
    }

    /** Whether the one who looks can still take it back. */
    public boolean isRevocable() {
        return crossing.given() && crossing.state() == CrossingState.OFFERED;
    }

    public boolean isOpen() {
        return crossing.state().open();
    }

    public boolean isDone() {
        return crossing.state() == CrossingState.ARRIVED;
    }

    /** Studbook number; null where it is not known here any more. */
    public @Nullable String getNumber() {
        if (crossing.animal() != null) {
            return crossing.animal().number();
        }
        return crossing.told() == null ? null : crossing.told().number();
    }
}
