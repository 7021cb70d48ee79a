package org.demebook.season;

import java.util.Optional;

/**
 * What may be taken off the diagonal of the kinships without losing convexity, to be put back in a form that is linear in the
 * plan: a female has all of her litter or none, so her u² is her u times half of her young; a male's u² is at least the
 * sum over his litters of the squares. Between whole plans that is more than u², which lifts the bound (the idea of
 * convex reformulation of 0–1 quadratic programs, Hammer and Rubin 1970, from memory).
 *
 * @param off by candidate, taken off; 0 or more
 * @param toPool to be added to N²·MK so that the form with the pool is convex; below 0 where less than that would do
 */
record Lift(double[] off, double toPool) {
    private static final int HALVINGS = 10;
    private static final double SAFE = .9;

    static Lift none(int candidates) {
        return new Lift(new double[candidates], 0);
    }

    /** @param once by candidate, whether it has at most one litter wherever the bound is likely to be */
    static Lift of(Genes genes, boolean[] once) {
        int n = genes.candidates();
        return Cholesky.of(genes.kinship(), new double[n])
                .flatMap(kinship -> largest(genes, kinship.inverseDiagonal(), once))
                .orElse(none(n));
    }

    /** In proportion to what each alone could give, as much as the matrix bears, less a reserve. */
    private static Optional<Lift> largest(Genes genes, double[] inverse, boolean[] once) {
        double low = 0;
        double high = 1;
        for (int halving = 0; halving < HALVINGS; halving++) {
            double middle = (low + high) / 2;
            if (Cholesky.of(genes.kinship(), share(inverse, once, middle)).isPresent()) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double[] off = share(inverse, once, SAFE * low);
        return Cholesky.of(genes.kinship(), off).map(rest -> new Lift(off, missing(genes, rest)));
    }

    private static double[] share(double[] inverse, boolean[] once, double share) {
        double[] off = new double[inverse.length];
        for (int candidate = 0; candidate < off.length; candidate++) {
            off[candidate] = once[candidate] ? share / inverse[candidate] : 0;
        }
        return off;
    }

    /** Schur complement: the form with the pool is convex if N²·MK is at least N²·bᵀ(K − off)⁻¹b. */
    private static double missing(Genes genes, Cholesky rest) {
        double square = genes.size() * genes.size();
        double needed = square * rest.inverseForm(genes.toPool());
        return needed * (1 + 1e-9) - genes.sumNow();
    }
}
