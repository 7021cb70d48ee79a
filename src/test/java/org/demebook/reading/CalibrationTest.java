package org.demebook.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Predicate;
import org.demebook.litter.Outcome;
import org.demebook.reading.LossReading.Loss;
import org.demebook.reading.LossReading.Verdict;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Simulated populations, each with 60 litters to compare with. Litters of 10 to 40 ova, as mainland boas have, and of 4 to 20,
 * as island ones; slugs 12 %, dead 5 % and malformed 2 % on average, each litter with shares of its own that scatter by a beta
 * distribution. The averages are those of four litters of <i>Chilabothrus subflavus</i> (public breeding notes: 78 live, 5
 * stillborn, 11 or 12 slugs); the scatter is common practice, no source.
 */
class CalibrationTest {
    private static final long SEED = 41_105;
    private static final int POPULATIONS = 40;
    private static final int LITTERS_COMPARED_WITH = 60;
    private static final int LITTERS_READ = 200;
    private static final double DEAD = 0.05;

    private final Random random = new Random(SEED);

    @ParameterizedTest
    @CsvSource({"10, 40", "4, 20"})
    void ordinary_litters_are_called_unusual_in_at_most_two_of_a_hundred(int fewestOva, int mostOva) {
        double unusual = share(DEAD, fewestOva, mostOva, loss -> true);
        assertThat(unusual).as("seed %d", SEED).isLessThanOrEqualTo(0.02);
        assertThat(unusual).as("seed %d: chance has its share", SEED).isGreaterThan(0.005);
    }

    /** Fewer ova tell less: of ten formed young five are expected dead, and three are not rare in ordinary litters. */
    @ParameterizedTest
    @CsvSource({"10, 40, 0.80", "4, 20, 0.70"})
    void litters_with_ten_times_the_stillbirths_are_called_unusual(int fewestOva, int mostOva, double atLeast) {
        double found = share(10 * DEAD, fewestOva, mostOva, loss -> loss.loss() == Loss.DEAD_IN_SAC_OR_AT_BIRTH);
        assertThat(found).as("seed %d", SEED).isGreaterThanOrEqualTo(atLeast);
    }

    /** The share of litters with so many dead in which a loss of that kind is called unusual, in ordinary populations. */
    private double share(double dead, int fewestOva, int mostOva, Predicate<LossReading> kind) {
        int unusual = 0;
        for (int population = 0; population < POPULATIONS; population++) {
            var usual = new UsualLosses(litters(LITTERS_COMPARED_WITH, DEAD, fewestOva, mostOva));
            for (var litter : litters(LITTERS_READ, dead, fewestOva, mostOva)) {
                unusual += usual.read(litter, null).losses().stream()
                                .anyMatch(loss -> kind.test(loss) && loss.verdict() == Verdict.UNUSUAL)
                        ? 1
                        : 0;
            }
        }
        return unusual / (double) (POPULATIONS * LITTERS_READ);
    }

    private List<Outcome> litters(int count, double dead, int fewestOva, int mostOva) {
        var litters = new ArrayList<Outcome>();
        for (int i = 0; i < count; i++) {
            int ova = fewestOva + random.nextInt(mostOva - fewestOva + 1);
            int slugs = hits(ova, 0.12, 0.06);
            int lost = hits(ova - slugs, dead, 0.03);
            int partDeveloped = hits(lost, 0.3, 0.01);
            int live = ova - slugs - lost;
            litters.add(new Outcome(
                    live, hits(live, 0.02, 0.02), lost - partDeveloped, 0, partDeveloped, slugs, 0, 0, ova));
        }
        return litters;
    }

    private int hits(int of, double share, double overdispersion) {
        double all = 1 / overdispersion - 1;
        double own = beta(share * all, (1 - share) * all);
        int hits = 0;
        for (int i = 0; i < of; i++) {
            hits += random.nextDouble() < own ? 1 : 0;
        }
        return hits;
    }

    private double beta(double alpha, double beta) {
        double one = gamma(alpha);
        return one / (one + gamma(beta));
    }

    /** Marsaglia &amp; Tsang (2000), from memory; below shape 1 by the power of a uniform. */
    private double gamma(double shape) {
        if (shape < 1) {
            return gamma(shape + 1) * Math.pow(random.nextDouble(), 1 / shape);
        }
        double d = shape - 1 / 3.0;
        double c = 1 / Math.sqrt(9 * d);
        while (true) {
            double normal = random.nextGaussian();
            double v = Math.pow(1 + c * normal, 3);
            if (v > 0 && Math.log(random.nextDouble()) < normal * normal / 2 + d - d * v + d * Math.log(v)) {
                return d * v;
            }
        }
    }
}
