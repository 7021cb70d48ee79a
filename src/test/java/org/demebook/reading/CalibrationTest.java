package org.demebook.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.demebook.litter.Outcome;
import org.demebook.reading.LossReading.Loss;
import org.demebook.reading.LossReading.Verdict;
import org.junit.jupiter.api.Test;

/**
 * Simulated populations, each with 60 litters to compare with. Litters of 10 to 40 ova, as mainland boas have; slugs 12 %, dead 5 % and malformed
 * 2 % on average, each litter with shares of its own that scatter by a beta distribution. The averages are those of four
 * litters of <i>Chilabothrus subflavus</i> (public breeding notes: 78 live, 5 stillborn, 11 or 12 slugs); the scatter is
 * common practice, no source. Of litters of 4 to 20 ova with ten times the stillbirths, 71 in 100 would be told: fewer ova
 * tell less.
 */
class CalibrationTest {
    private static final long SEED = 41_105;
    private static final int POPULATIONS = 20;
    private static final int LITTERS_COMPARED_WITH = 60;
    private static final int LITTERS_READ = 100;
    private static final double DEAD = 0.05;

    private final Random random = new Random(SEED);

    @Test
    void ordinary_litters_are_called_unusual_in_at_most_two_of_a_hundred() {
        int unusual = 0;
        for (int population = 0; population < POPULATIONS; population++) {
            var usual = new UsualLosses(litters(LITTERS_COMPARED_WITH, DEAD));
            for (var litter : litters(LITTERS_READ, DEAD)) {
                unusual +=
                        usual.read(litter, null).losses().stream().anyMatch(loss -> loss.verdict() == Verdict.UNUSUAL)
                                ? 1
                                : 0;
            }
        }
        assertThat(unusual / 2000.0).as("seed %d", SEED).isLessThanOrEqualTo(0.02);
        assertThat(unusual).as("seed %d: chance has its share", SEED).isPositive();
    }

    @Test
    void litters_with_ten_times_the_stillbirths_are_called_unusual_in_at_least_eighty_of_a_hundred() {
        int found = 0;
        for (int population = 0; population < POPULATIONS; population++) {
            var usual = new UsualLosses(litters(LITTERS_COMPARED_WITH, DEAD));
            for (var litter : litters(LITTERS_READ, 10 * DEAD)) {
                found += usual.read(litter, null).losses().stream()
                                .anyMatch(loss -> loss.loss() == Loss.DEAD_IN_SAC_OR_AT_BIRTH
                                        && loss.verdict() == Verdict.UNUSUAL)
                        ? 1
                        : 0;
            }
        }
        assertThat(found / 2000.0).as("seed %d", SEED).isGreaterThanOrEqualTo(0.80);
    }

    private List<Outcome> litters(int count, double dead) {
        var litters = new ArrayList<Outcome>();
        for (int i = 0; i < count; i++) {
            int ova = 10 + random.nextInt(31);
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
