package org.demebook.season;

import java.util.Arrays;

/** A plan that is being changed, with its figures and what it uses of every limit. A change costs O(1) to judge. */
final class Draft {
    /** Accepted changes after which sums are computed anew, so that rounding does not add up. */
    private static final int REFRESH = 5_000;

    final Season season;
    final int[] sires;
    private final double weight;
    private final Genes genes;
    private final double[] u;
    private double[] related;
    private double sum;
    private double young;
    private double inbred;
    private int changes;

    private int litters;
    private final int[] ofMale;
    private final int[] abroadOfMale;
    private final int[] ofCollection;
    private final int[] travellers;
    /** By how much limits are exceeded, all together. */
    private int excess;

    private final int[] changed = new int[16];
    private final double[] by = new double[16];
    private int parts;
    private double moreSum;
    private double moreYoung;
    private double moreInbred;

    /** @param weight of the young's mean inbreeding beside the mean kinship */
    Draft(Season season, int[] plan, double weight) {
        this.season = season;
        this.weight = weight;
        genes = season.genes;
        sires = plan.clone();
        ofMale = new int[season.males];
        abroadOfMale = new int[season.males];
        ofCollection = new int[season.littersOfCollection.length];
        travellers = new int[season.littersOfCollection.length];
        for (int female = 0; female < sires.length; female++) {
            if (sires[female] != Season.NONE) {
                count(female, sires[female], 1);
            }
        }
        u = halves(season, sires);
        related = genes.related(u);
        refresh();
    }

    /** u of a plan: by candidate, half of the young that count. */
    static double[] halves(Season season, int[] sires) {
        double[] halves = new double[season.genes.candidates()];
        for (int female = 0; female < sires.length; female++) {
            if (sires[female] != Season.NONE) {
                halves[female] += season.young[female] / 2;
                halves[season.females + sires[female]] += season.young[female] / 2;
            }
        }
        return halves;
    }

    private void refresh() {
        double[] exact = halves(season, sires);
        System.arraycopy(exact, 0, u, 0, u.length);
        related = genes.related(u);
        sum = genes.sum(u, related);
        young = Arrays.stream(u).sum();
        inbred = 0;
        for (int female = 0; female < sires.length; female++) {
            if (sires[female] != Season.NONE) {
                inbred += season.young[female] * inbreeding(female, sires[female]);
            }
        }
        changes = 0;
    }

    private double inbreeding(int female, int male) {
        return genes.kinship()[female][season.females + male];
    }

    int litters() {
        return litters;
    }

    /** Young that count. */
    double young() {
        return young;
    }

    /** Of all kinships after the season. */
    double sum() {
        return sum;
    }

    /** K·u of a candidate. */
    double related(int candidate) {
        return related[candidate];
    }

    /** Whether his limit leaves him another litter. */
    boolean leavesMale(int male) {
        return ofMale[male] < season.littersOfMale[male];
    }

    /** Of the pool after the season. */
    double meanKinship() {
        return after(sum, young);
    }

    /** Of the young; 0 without any. */
    double meanInbreeding() {
        return young == 0 ? 0 : inbred / young;
    }

    /** What is to be least. */
    double objective() {
        return meanKinship() + weight * meanInbreeding();
    }

    private double after(double sum, double young) {
        double animals = genes.size() + young;
        return sum / (animals * animals);
    }

    /** No limit is exceeded; there may be fewer litters than wanted. */
    boolean isWithin() {
        return excess == 0 && litters <= season.most;
    }

    boolean keepsLimits() {
        return isWithin() && litters >= season.least;
    }

    /** Begins another change; the one before has been taken or undone. */
    void begin() {
        parts = 0;
        moreSum = 0;
        moreYoung = 0;
        moreInbred = 0;
    }

    /** Takes a litter off the counts, or puts it on; figures follow in {@link #proposed}. */
    void shift(int female, int male, int sign) {
        count(female, male, sign);
        double half = sign * season.young[female] / 2;
        part(female, half);
        part(season.females + male, half);
        moreYoung += 2 * half;
        moreInbred += 2 * half * inbreeding(female, male);
    }

    private void part(int candidate, double half) {
        for (int i = 0; i < parts; i++) {
            if (changed[i] == candidate) {
                by[i] += half;
                return;
            }
        }
        changed[parts] = candidate;
        by[parts++] = half;
    }

    /** The objective with the change. */
    double proposed() {
        double more = 0;
        for (int i = 0; i < parts; i++) {
            if (by[i] != 0) {
                double[] row = genes.kinship()[changed[i]];
                double square = 0;
                for (int j = 0; j < parts; j++) {
                    square += by[j] * row[changed[j]];
                }
                more += by[i] * (genes.linear(changed[i]) + 2 * related[changed[i]] + square);
            }
        }
        moreSum = more;
        double thenYoung = young + moreYoung;
        double inbreeding = weight == 0 || thenYoung <= 0 ? 0 : (inbred + moreInbred) / thenYoung;
        return after(sum + moreSum, thenYoung) + weight * inbreeding;
    }

    /** Makes the change good; {@link #proposed} was asked, {@code sires} are the caller's to set. */
    void take() {
        sum += moreSum;
        young += moreYoung;
        inbred += moreInbred;
        for (int i = 0; i < parts; i++) {
            if (by[i] != 0) {
                u[changed[i]] += by[i];
                double[] row = genes.kinship()[changed[i]];
                for (int candidate = 0; candidate < related.length; candidate++) {
                    related[candidate] += by[i] * row[candidate];
                }
            }
        }
        changes++;
    }

    /** To be called when {@code sires} are set. */
    void settle() {
        if (changes >= REFRESH) {
            refresh();
        }
    }

    private void count(int female, int male, int sign) {
        litters += sign;
        int home = season.collection[season.females + male];
        int there = season.collection[female];
        ofMale[male] = counted(ofMale[male], sign, season.littersOfMale[male]);
        ofCollection[there] = counted(ofCollection[there], sign, season.littersOfCollection[there]);
        if (home != there) {
            boolean travelled = abroadOfMale[male] > 0;
            abroadOfMale[male] += sign;
            if (travelled != abroadOfMale[male] > 0) {
                travellers[home] = counted(travellers[home], sign, season.travellersOfCollection[home]);
            }
        }
    }

    private int counted(int now, int sign, int limit) {
        int then = now + sign;
        if (Math.max(now, then) > limit) {
            excess += sign;
        }
        return then;
    }
}
