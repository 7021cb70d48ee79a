package org.demebook.reading;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.chance.SexRatio;
import org.demebook.keeper.Standing;
import org.demebook.litter.BirthReading;
import org.demebook.litter.Litters;
import org.demebook.litter.Mate;
import org.demebook.notation.Sex;
import org.demebook.problem.Rule;
import org.demebook.reading.FatherlessSigns.Evidence;
import org.demebook.registry.Breach;
import org.demebook.registry.Custody;
import org.demebook.registry.Offspring;
import org.demebook.registry.Populations;

/** What a litter's counts tell; for those who see the litter. Computed on what a few short reads gave. */
@ApplicationScoped
public class Readings implements BirthReading {
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
        var sexes = offspring.ofLitter(by.populationId(), litterId).stream()
                .filter(animal -> !animal.merged())
                .map(Custody::sex)
                .toList();
        var lastMetOn = litters.mates(by, litterId).stream()
                .map(Mate::lastMetOn)
                .max(Comparator.naturalOrder())
                .orElse(null);
        var told = new LitterAtBirth(
                litterId, litter.outcome(), sexes, litter.born().earliest(), lastMetOn);
        return fatherlessSigns(by, told, noMale, onlyRecessives);
    }

    /** Fatherless young are named as soon as their litter is registered, where the records alone make them suspected. */
    @Override
    public List<Breach> check(Standing by, LitterAtBirth litter) {
        var signs = fatherlessSigns(by, litter, false, false);
        if (!signs.suspected()) {
            return List.of();
        }
        var reasons = signs.signs().stream()
                .filter(sign -> sign.state() == FatherlessSigns.State.FOUND)
                .map(FatherlessSigns.Sign::reason)
                .collect(Collectors.joining(" "));
        return List.of(Breach.notice(
                Rule.PARTHENOGENESIS_SUSPECTED,
                "sire",
                null,
                "%s %s Every sign stands under litters/%s/fatherless-signs."
                        .formatted(signs.sentence(), reasons, litter.id()),
                null));
    }

    private FatherlessSigns fatherlessSigns(Standing by, LitterAtBirth litter, boolean noMale, boolean onlyRecessives) {
        var profile = populations.get(by).profile();
        var ofPopulation = offspring.sexesOfLitters(by.populationId());
        return FatherlessSigns.of(new Evidence(
                litter.outcome(),
                new SexRatio(count(litter.sexes(), Sex.MALE), count(litter.sexes(), Sex.FEMALE)),
                count(litter.sexes(), Sex.UNKNOWN),
                profile.sexSystem(),
                litter.bornEarliest(),
                litter.lastMetOn(),
                noMale,
                onlyRecessives,
                profile.litter().ovaAtLeast(),
                new SexRatio(ofPopulation.get(Sex.MALE), ofPopulation.get(Sex.FEMALE))));
    }

    private static int count(List<Sex> sexes, Sex sex) {
        return (int) sexes.stream().filter(sex::equals).count();
    }
}
