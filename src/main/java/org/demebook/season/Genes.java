package org.demebook.season;

/**
 * The mean kinship of a pool after litters, as a function of how many young each candidate contributes.
 *
 * <p>A parent contributes half of each young. With u these halves by candidate, B the young that count, K the kinships and b
 * the mean kinships with the pool, the sum of all kinships is N²·MK + 2N·bᵀu + uᵀKu + Σ uₐ·(1 − Kₐₐ)/2. The last term is
 * there because a young is with itself ½ + ½·f(parents), where the form uᵀKu has a pair of its full siblings. The kinship
 * of the two parents cancels out. Source: our own, from the recursion of docs/methods/births.md.
 *
 * @param size N, the weights of the animals in the pool now added up; their number where each weighs 1
 * @param meanKinship MK of the pool now by these weights, each with itself included
 * @param kinship K of the candidates, females first
 * @param toPool b, the mean kinship of each candidate with the pool now, by the same weights
 */
record Genes(double size, double meanKinship, double[][] kinship, double[] toPool) {
    /** The half below the diagonal holds above it too: what is computed column by column may differ in its last bits. */
    Genes {
        kinship = symmetric(kinship);
    }

    private static double[][] symmetric(double[][] kinship) {
        double[][] symmetric = new double[kinship.length][];
        for (int row = 0; row < kinship.length; row++) {
            symmetric[row] = kinship[row].clone();
            for (int column = 0; column < row; column++) {
                symmetric[column][row] = kinship[row][column];
            }
        }
        return symmetric;
    }

    int candidates() {
        return toPool.length;
    }

    /** What a young has in common with itself beyond what two of its siblings have, by parent: (1 − Kₐₐ)/2. */
    double own(int candidate) {
        return (1 - kinship[candidate][candidate]) / 2;
    }

    /** The part of the sum of kinships that is linear in u. */
    double linear(int candidate) {
        return 2 * size * toPool[candidate] + own(candidate);
    }

    /** N²·MK: the sum of kinships before the season. */
    double sumNow() {
        return size * size * meanKinship;
    }

    /** K·u. Cost: candidates × contributing candidates. */
    double[] related(double[] u) {
        double[] related = new double[u.length];
        for (int other = 0; other < u.length; other++) {
            if (u[other] != 0) {
                double[] row = kinship[other];
                for (int candidate = 0; candidate < u.length; candidate++) {
                    related[candidate] += u[other] * row[candidate];
                }
            }
        }
        return related;
    }

    /** The sum of kinships after the season. */
    double sum(double[] u, double[] related) {
        double sum = sumNow();
        for (int candidate = 0; candidate < u.length; candidate++) {
            if (u[candidate] != 0) {
                sum += u[candidate] * (linear(candidate) + related[candidate]);
            }
        }
        return sum;
    }
}
