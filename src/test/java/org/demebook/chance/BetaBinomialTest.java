package org.demebook.chance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import org.junit.jupiter.api.Test;

/** Against the definitions, in exact fractions. */
class BetaBinomialTest {
    @Test
    void one_bad_in_ten_makes_two_of_fourteen_chance_and_fourteen_of_sixteen_none() {
        var oneInTen = new BetaBinomial(0.1, 0);
        // the trade's own examples (computed, no source beside)
        assertThat(oneInTen.upperTail(2, 14)).isCloseTo(0.42, within(0.005));
        assertThat(oneInTen.upperTail(5, 14)).isCloseTo(0.0092, within(0.00005));
        assertThat(oneInTen.upperTail(14, 16)).isCloseTo(1e-12, within(0.05e-12));
    }

    @Test
    void without_overdispersion_the_tail_is_that_of_the_binomial_distribution() {
        for (int n = 1; n <= 40; n += 3) {
            for (int hit = 0; hit <= n; hit++) {
                double exact = binomialTail(hit, n, 1, 10);
                assertThat(new BetaBinomial(0.1, 0).upperTail(hit, n))
                        .as("%d of %d", hit, n)
                        .isCloseTo(exact, within(1e-12 + 1e-10 * exact));
            }
        }
    }

    @Test
    void the_tail_is_that_of_the_definition_by_rising_factorials() {
        // alpha 1, beta 9: share 1/10, correlation 1 / (1 + 9 + 1); alpha 2, beta 3: share 2/5, correlation 1/6
        for (var shape : new int[][] {{1, 9}, {2, 3}, {1, 1}, {3, 27}}) {
            int alpha = shape[0];
            int beta = shape[1];
            var model = new BetaBinomial(alpha / (double) (alpha + beta), 1.0 / (alpha + beta + 1));
            for (int n = 1; n <= 25; n += 4) {
                for (int hit = 0; hit <= n; hit++) {
                    double exact = betaBinomialTail(hit, n, alpha, beta);
                    assertThat(model.upperTail(hit, n))
                            .as("%d of %d, alpha %d, beta %d", hit, n, alpha, beta)
                            .isCloseTo(exact, within(1e-12 + 1e-10 * exact));
                }
            }
        }
    }

    @Test
    void the_more_groups_differ_the_likelier_is_a_bad_one() {
        double last = new BetaBinomial(0.1, 0).upperTail(6, 14);
        for (double overdispersion : new double[] {0.001, 0.01, 0.05, 0.1, 0.2}) {
            double tail = new BetaBinomial(0.1, overdispersion).upperTail(6, 14);
            assertThat(tail).isGreaterThan(last);
            last = tail;
        }
    }

    private static double binomialTail(int hit, int n, int of, int outOf) {
        var sum = BigInteger.ZERO;
        for (int k = hit; k <= n; k++) {
            sum = sum.add(ways(n, k)
                    .multiply(BigInteger.valueOf(of).pow(k))
                    .multiply(BigInteger.valueOf(outOf - of).pow(n - k)));
        }
        return quotient(sum, BigInteger.valueOf(outOf).pow(n));
    }

    /** P(k) = C(n, k) · α^(k) β^(n − k) / (α + β)^(n), with rising factorials. */
    private static double betaBinomialTail(int hit, int n, int alpha, int beta) {
        var sum = BigInteger.ZERO;
        for (int k = hit; k <= n; k++) {
            sum = sum.add(ways(n, k).multiply(rising(alpha, k)).multiply(rising(beta, n - k)));
        }
        return quotient(sum, rising(alpha + beta, n));
    }

    private static BigInteger rising(int from, int times) {
        var product = BigInteger.ONE;
        for (int i = 0; i < times; i++) {
            product = product.multiply(BigInteger.valueOf(from + i));
        }
        return product;
    }

    private static BigInteger ways(int n, int k) {
        var ways = BigInteger.ONE;
        for (int i = 0; i < k; i++) {
            ways = ways.multiply(BigInteger.valueOf(n - i)).divide(BigInteger.valueOf(i + 1));
        }
        return ways;
    }

    private static double quotient(BigInteger over, BigInteger under) {
        return new BigDecimal(over)
                .divide(new BigDecimal(under), MathContext.DECIMAL64)
                .doubleValue();
    }
}
