package org.demebook.season;

import java.util.Optional;

/** The factor L of a positive definite matrix L·Lᵀ. Cost: n³/3 for the factor, n² for each solution. */
final class Cholesky {
    private final double[][] lower;

    private Cholesky(double[][] lower) {
        this.lower = lower;
    }

    /** Of a matrix less a diagonal; nothing if what is left is not positive definite. */
    static Optional<Cholesky> of(double[][] matrix, double[] less) {
        int n = matrix.length;
        double[][] lower = new double[n][];
        for (int row = 0; row < n; row++) {
            lower[row] = new double[row + 1];
            for (int column = 0; column <= row; column++) {
                double sum = matrix[row][column] - (row == column ? less[row] : 0);
                for (int k = 0; k < column; k++) {
                    sum -= lower[row][k] * lower[column][k];
                }
                if (row > column) {
                    lower[row][column] = sum / lower[column][column];
                } else if (sum > n * Math.ulp(matrix[row][row])) {
                    lower[row][row] = Math.sqrt(sum);
                } else {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(new Cholesky(lower));
    }

    /** vᵀ·M⁻¹·v. */
    double inverseForm(double[] v) {
        return squares(v, 0);
    }

    /** By row, what stands on the diagonal of M⁻¹. */
    double[] inverseDiagonal() {
        double[] diagonal = new double[lower.length];
        for (int row = 0; row < lower.length; row++) {
            double[] unit = new double[lower.length];
            unit[row] = 1;
            diagonal[row] = squares(unit, row);
        }
        return diagonal;
    }

    /** |L⁻¹·v|², where v is 0 before a row. */
    private double squares(double[] v, int from) {
        double[] solution = new double[v.length];
        double sum = 0;
        for (int row = from; row < v.length; row++) {
            double rest = v[row];
            for (int k = from; k < row; k++) {
                rest -= lower[row][k] * solution[k];
            }
            solution[row] = rest / lower[row][row];
            sum += solution[row] * solution[row];
        }
        return sum;
    }
}
