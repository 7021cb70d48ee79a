package org.demebook.planning;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.demebook.ancestry.Ancestries;
import org.demebook.consent.Purpose;
import org.demebook.keeper.Standing;
import org.demebook.kinship.GenePool;
import org.demebook.notation.Sex;
import org.demebook.planning.BreedersView.Breeder;
import org.jspecify.annotations.Nullable;

/** Which animals of an asker may be paired, and how they are related to each other. */
@ApplicationScoped
public class Breeders {
    private static final int MOST_COMPARED = 60;
    private static final List<Sex> FEMALES_FIRST = List.of(Sex.FEMALE, Sex.MALE, Sex.UNKNOWN);

    @Inject
    SeasonFields fields;

    @Inject
    Ancestries ancestries;

    @Inject
    Clock clock;

    /**
     * Of the animals that live with the asker. Refuses with BAD_PARAMETER a day that is over. Costs what a question for partners does,
     * and O(population) for each animal that is compared.
     *
     * @param pairOn null for today
     */
    public BreedersView of(Standing by, @Nullable LocalDate pairOn) {
        var day = pairOn == null ? LocalDate.now(clock) : pairOn;
        var sighted = fields.sighted(by, day);
        var snapshot = sighted.snapshot();
        int[] own = IntStream.of(snapshot.living())
                .filter(sighted.own()::contains)
                .boxed()
                .sorted(Comparator.comparing((Integer row) -> FEMALES_FIRST.indexOf(snapshot.sex(row))))
                .mapToInt(row -> row)
                .toArray();
        var animals = IntStream.of(own).mapToObj(row -> breeder(sighted, row)).toList();
        int[] compared = compared(own, animals);
        ancestries.disclosed(by, Purpose.PEDIGREE_VIEW, clock.instant(), snapshot, IntStream.of(own));
        return new BreedersView(
                day,
                snapshot.pool().map(GenePool::meanKinship).orElse(null),
                animals,
                IntStream.of(compared).mapToObj(snapshot::number).toList(),
                snapshot.pedigree().kinship(compared, compared),
                snapshot.restsOnWhatIsNotShown(compared));
    }

    /** As many as can be told apart: those that may be paired before the others, in the order of the list. */
    private static int[] compared(int[] own, List<Breeder> animals) {
        return IntStream.range(0, own.length)
                .boxed()
                .sorted(Comparator.comparing(
                        (Integer place) -> !animals.get(place).isPairable()))
                .limit(MOST_COMPARED)
                .sorted()
                .mapToInt(place -> own[place])
                .toArray();
    }

    private static Breeder breeder(Sighted sighted, int row) {
        var snapshot = sighted.snapshot();
        var candidates = sighted.candidates();
        var sex = snapshot.sex(row);
        var objection = sex == Sex.UNKNOWN ? null : candidates.objection(row).orElse(null);
        return new Breeder(
                snapshot.number(row),
                sex,
                snapshot.pool().map(pool -> pool.meanKinship(row)).orElse(null),
                objection == null ? null : objection.hindrance(),
                objection == null ? null : objection.words(),
                sex == Sex.UNKNOWN ? List.of() : candidates.notes(row));
    }
}
