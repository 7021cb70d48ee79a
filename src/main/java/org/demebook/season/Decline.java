package org.demebook.season;

import java.util.Optional;

/**
 * Gene diversity by season, the first today's.
 *
 * @param years from one season to the next
 */
record Decline(double years, double[] diversity) {
    private int last() {
        return diversity.length - 1;
    }

    double lossPerSeason() {
        int from = last() == 1 ? 0 : diversity.length / 2;
        return last() == 0 ? Double.NaN : 1 - Math.pow(diversity[last()] / diversity[from], 1.0 / (last() - from));
    }

    Optional<Outlook.Until> below(double target) {
        if (!(target > 0 && target <= 1)) {
            throw new IllegalArgumentException("a target for gene diversity is above 0, up to 1, not " + target);
        }
        if (diversity[0] < target) {
            return Optional.of(new Outlook.Until(0, false));
        }
        for (int season = 1; season <= last(); season++) {
            double before = diversity[season - 1];
            if (diversity[season] < target) {
                double part = (before - target) / (before - diversity[season]);
                return Optional.of(new Outlook.Until(years * (season - 1 + part), false));
            }
        }
        double loss = lossPerSeason();
        if (!(loss > 0)) {
            return Optional.empty();
        }
        double more = Math.log(target / diversity[last()]) / Math.log(1 - loss);
        return Optional.of(new Outlook.Until(years * (last() + more), true));
    }
}
