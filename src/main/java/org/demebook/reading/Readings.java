package org.demebook.reading;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.demebook.chance.SexRatio;
import org.demebook.keeper.Standing;
import org.demebook.litter.Litters;
import org.demebook.litter.Mate;
import org.demebook.notation.Sex;
import org.demebook.reading.FatherlessSigns.Evidence;
import org.demebook.registry.Custody;
import org.demebook.registry.Offspring;
import org.demebook.registry.Populations;

/** What a litter's counts tell; for those who see the litter. Computed on what a few short reads gave. */
@ApplicationScoped
public class Readings {
    /** With fewer, a figure of all would tell of one collection's litters to another. */
    private static final int FEWEST_COLLECTIONS = 3;

    @Inject
    Litters litters;

    @Inject
    Offspring offspring;

    @Inject
    Populations populations;

    /** Whether the losses of a litter are within chance for its population. */
    public LitterReading read(Standing by, UUID litterId) {
        var outcome = litters.get(by, litterId).outcome();
        var days = litters.daysFromShed(by, litterId);
        var others = litters.outcomesOfOthers(by, litterId, FEWEST_COLLECTIONS);
        return new UsualLosses(others).read(outcome, days.isPresent() ? days.getAsInt() : null);
    }

    /**
     * What speaks for young without a sire.
     *
     * @param noMale the keeper says that the dam met none in the 24 months before
     * @param onlyRecessives the keeper says that every young shows recessives of the dam alone
     */
    public FatherlessSigns fatherlessSigns(Standing by, UUID litterId, boolean noMale, boolean onlyRecessives) {
        var litter = litters.get(by, litterId);
        var young = offspring.ofLitter(by.populationId(), litterId).stream()
                .filter(animal -> !animal.merged())
                .toList();
        var profile = populations.get(by).profile();
        var lastMetOn = litters.mates(by, litterId).stream()
                .map(Mate::lastMetOn)
                .max(Comparator.naturalOrder())
                .orElse(null);
        var sexes = offspring.sexesOfLitters(by.populationId());
        return FatherlessSigns.of(new Evidence(
                litter.outcome(),
                new SexRatio(count(young, Sex.MALE), count(young, Sex.FEMALE)),
                count(young, Sex.UNKNOWN),
                profile.sexSystem(),
                litter.born().earliest(),
                lastMetOn,
                noMale,
                onlyRecessives,
                profile.litter().ovaAtLeast(),
                new SexRatio(sexes.get(Sex.MALE), sexes.get(Sex.FEMALE))));
    }

    private static int count(List<Custody> young, Sex sex) {
        return (int) young.stream().filter(animal -> animal.sex() == sex).count();
    }
}
