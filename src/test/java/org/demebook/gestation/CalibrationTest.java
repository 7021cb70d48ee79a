package org.demebook.gestation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import org.demebook.taxon.TaxonProfile;
import org.junit.jupiter.api.Test;

/** Whether the windows hold what they promise: births are drawn from the model that the window is computed under. */
class CalibrationTest {
    private static final TaxonProfile.Gestation BOAS = TaxonProfile.BOAS.gestation();
    private static final LocalDate SHED_ON = LocalDate.parse("2026-03-14");
    private static final int FEMALES = 2000;

    @Test
    void of_2000_females_the_ninety_per_cent_window_holds_88_to_92_per_cent_of_births() {
        for (long seed = 1; seed <= 5; seed++) {
            var random = new Random(seed);
            int inNinety = 0;
            int inFifty = 0;
            for (int i = 0; i < FEMALES; i++) {
                double ownMean = BOAS.daysFromShedToBirth() + BOAS.spreadBetweenFemales() * random.nextGaussian();
                var own = litters(random, ownMean, BOAS.spreadWithinFemale(), random.nextInt(5));
                var born = SHED_ON.plusDays(days(random, ownMean, BOAS.spreadWithinFemale()));
                var due = DueWindow.of(shed(), BOAS, "Marrowfin Cay", own, List.of());
                inNinety += due.ninety().contains(born) ? 1 : 0;
                inFifty += due.fifty().contains(born) ? 1 : 0;
            }
            assertThat(inNinety / (double) FEMALES).as("seed %d", seed).isBetween(0.88, 0.92);
            assertThat(inFifty / (double) FEMALES).as("seed %d", seed).isBetween(0.46, 0.54);
        }
    }

    @Test
    void where_a_population_differs_from_the_profile_its_own_data_keep_the_window_honest() {
        // later, more alike and less regular than the profile says
        double mean = 130;
        double between = 3;
        double within = 6;
        var random = new Random(7);
        int inNinety = 0;
        int inNinetyOfTheProfile = 0;
        for (int i = 0; i < FEMALES; i++) {
            var others = new ArrayList<Interval>();
            for (int female = 0; female < 12; female++) {
                others.addAll(litters(random, mean + between * random.nextGaussian(), within, 1 + random.nextInt(3)));
            }
            double ownMean = mean + between * random.nextGaussian();
            var own = litters(random, ownMean, within, random.nextInt(5));
            var born = SHED_ON.plusDays(days(random, ownMean, within));
            inNinety += DueWindow.of(shed(), BOAS, "Marrowfin Cay", own, others)
                            .ninety()
                            .contains(born)
                    ? 1
                    : 0;
            inNinetyOfTheProfile += DueWindow.of(shed(), BOAS, "Marrowfin Cay", own, List.of())
                            .ninety()
                            .contains(born)
                    ? 1
                    : 0;
        }
        assertThat(inNinety / (double) FEMALES).isBetween(0.86, 0.94);
        assertThat(inNinetyOfTheProfile / (double) FEMALES).isLessThan(0.7);
    }

    private static Landmark.Noted shed() {
        return new Landmark.Noted(Landmark.POST_OVULATION_SHED, SHED_ON, HowKnown.SEEN);
    }

    private static List<Interval> litters(Random random, double ownMean, double within, int count) {
        var damId = new UUID(random.nextLong(), random.nextLong());
        var litters = new ArrayList<Interval>();
        for (int i = 0; i < count; i++) {
            var on = LocalDate.parse("2020-03-01").plusYears(i);
            litters.add(new Interval(
                    damId,
                    new Landmark.Noted(Landmark.POST_OVULATION_SHED, on, HowKnown.SEEN),
                    on.plusDays(days(random, ownMean, within))));
        }
        return litters;
    }

    private static long days(Random random, double ownMean, double within) {
        return Math.round(ownMean + within * random.nextGaussian());
    }
}
