package org.demebook.season;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * Where gene diversity may lie in seasons ahead, by lot.
 *
 * @param years from one season to the next
 * @param seasons the first is today; the pool's gene diversity after each, 0 where nobody was left
 */
public record Spread(double years, List<Interval> seasons) {
    public Spread {
        seasons = List.copyOf(seasons);
    }

    /** When its mean falls below a target in (0, 1]; as {@link Outlook#below}. */
    public Optional<Outlook.Until> below(double target) {
        return below(Interval::mean, target);
    }

    /** When the lower end of the interval does: one course in twenty is there by then. */
    public Optional<Outlook.Until> soonestBelow(double target) {
        return below(Interval::low, target);
    }

    /** When the upper end of the interval does: one course in twenty is not yet there. */
    public Optional<Outlook.Until> latestBelow(double target) {
        return below(Interval::high, target);
    }

    private Optional<Outlook.Until> below(ToDoubleFunction<Interval> end, double target) {
        return new Decline(years, seasons.stream().mapToDouble(end).toArray()).below(target);
    }
}
