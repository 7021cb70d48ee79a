package org.demebook.federation;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.ThreadLocalRandom;
import org.jspecify.annotations.Nullable;

/** How it goes with one peer in one population: when to ask it again, and for how much at once. */
final class Link {
    static final Duration EVERY = Duration.ofSeconds(1);
    static final Duration LONGEST_BACK_OFF = Duration.ofSeconds(60);

    private static final int FIRST_PAGE = 500;
    private static final int SMALLEST_PAGE = 1;
    private static final Duration BRISK = Duration.ofMillis(700);
    private static final Duration SLOW = Duration.ofSeconds(5);
    private static final Duration LONG = Duration.ofMinutes(10);

    private final int largestPage;
    private int pageSize;
    private int failures;
    private long dueAt;
    private boolean running;
    private boolean again;
    private long answeredAt;
    private boolean hintUnderWay;
    private boolean hintAgain;
    private @Nullable Instant caughtUpAt;

    /** @param now a reading of a clock that only goes on, in nanoseconds */
    Link(int largestPage, long now) {
        this.largestPage = largestPage;
        this.pageSize = Math.min(FIRST_PAGE, largestPage);
        this.dueAt = now;
        this.answeredAt = now;
    }

    /** Whether a round begins now; if so, nobody else begins one until {@link #ended}. */
    synchronized boolean begins(long now) {
        if (running || now - dueAt < 0) {
            return false;
        }
        running = true;
        again = false;
        return true;
    }

    /** The peer was heard of, or has something new: no waiting any more. */
    synchronized void wake(long now) {
        again = true;
        dueAt = now;
    }

    synchronized void ended(boolean well, long now) {
        running = false;
        caughtUpAt = well ? Instant.now() : caughtUpAt;
        failures = well ? 0 : failures + 1;
        answeredAt = well ? now : answeredAt;
        dueAt = well && again ? now : now + (well ? EVERY.toNanos() : backOff());
    }

    /** Doubles with every failure up to a minute; between half of that and all of it, so that nodes do not come in step. */
    private long backOff() {
        long longest = Math.min(LONGEST_BACK_OFF.toNanos(), EVERY.toNanos() << Math.min(failures, 10));
        return ThreadLocalRandom.current().nextLong(longest / 2, longest + 1);
    }

    /** For so long that its journal is asked for at others: these give no more of it than everybody may read. */
    synchronized boolean isLongAway(long now) {
        return failures > 0 && now - answeredAt > LONG.toNanos();
    }

    /** When everything that the peer had was here, the last time since this server started. */
    synchronized Optional<Instant> caughtUpAt() {
        return Optional.ofNullable(caughtUpAt);
    }

    synchronized int pageSize() {
        return pageSize;
    }

    /** A full page came in that time. */
    synchronized void cameIn(Duration time) {
        if (time.compareTo(BRISK) < 0) {
            pageSize = Math.min(largestPage, pageSize * 2);
        } else if (time.compareTo(SLOW) > 0) {
            shrink();
        }
    }

    /** A page did not come. @return whether there are smaller ones */
    synchronized boolean shrink() {
        boolean smaller = pageSize > SMALLEST_PAGE;
        pageSize = Math.max(SMALLEST_PAGE, pageSize / 4);
        return smaller;
    }

    /** Whether a hint is sent now; one at a time, and one more after it for all that came meanwhile. */
    synchronized boolean beginsHint() {
        hintAgain = hintUnderWay;
        boolean begins = !hintUnderWay && failures == 0;
        hintUnderWay |= begins;
        return begins;
    }

    /** @return whether to send another one */
    synchronized boolean endedHint() {
        boolean another = hintAgain;
        hintUnderWay = another;
        hintAgain = false;
        return another;
    }
}
