package org.demebook.season;

import java.util.List;

/**
 * What would come of given pairs. Figures as in {@link SeasonPlan}.
 *
 * @param litters by female
 * @param now mean kinship of the pool as it is
 * @param after mean kinship of the pool when the young that count have joined it
 * @param meanInbreeding of the young; 0 without any
 * @param keepsAll whether the pairs keep every limit of the season and have every settled pair among them
 */
public record Evaluation(
        List<SeasonPlan.Litter> litters, double now, double after, double meanInbreeding, boolean keepsAll) {
    public Evaluation {
        litters = List.copyOf(litters);
    }

    public double geneDiversityNow() {
        return 1 - now;
    }

    public double geneDiversityAfter() {
        return 1 - after;
    }
}
