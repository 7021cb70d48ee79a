package org.demebook.rearing;

import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.demebook.diary.CareRecord;
import org.demebook.diary.CareRecords;
import org.demebook.diary.Diary;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.litter.Litters;
import org.demebook.notation.Mass;
import org.demebook.problem.Refusal;
import org.demebook.rearing.LitterBoard.BoardRow;
import org.demebook.rearing.Readiness.LeavingCondition;
import org.demebook.rearing.Readiness.Young;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.registry.KnownAnimals.KnownAnimal;
import org.demebook.registry.Offspring;
import org.demebook.registry.Populations;
import org.demebook.taxon.TaxonProfile;
import org.jspecify.annotations.Nullable;

/**
 * What follows from the care records that the asker sees. Of an animal that they do not hold, and of which they see no
 * record, everything refuses with NOT_YOUR_ANIMAL.
 */
@ApplicationScoped
public class Rearing {
    /** An animal and the others of its litter, with what the asker sees of each. */
    private record Family(AnimalView animal, Diary diary, List<Diary> siblings) {}

    @Inject
    Offspring offspring;

    @Inject
    Animals animals;

    @Inject
    Litters litters;

    @Inject
    CareRecords careRecords;

    @Inject
    Populations populations;

    @Inject
    Keepers keepers;

    @Inject
    Clock clock;

    /** How it gains, beside its siblings. */
    @Transactional
    public Growth growth(Standing by, String number) {
        var family = family(by, number);
        return Growth.of(
                family.animal().number(),
                family.animal().born(),
                family.diary(),
                family.siblings(),
                Siblings.behind(family.diary(), family.siblings(), today()));
    }

    /**
     * Whether it may leave.
     *
     * @param on null: today
     */
    @Transactional
    public LeavingView readiness(Standing by, String number, @Nullable LocalDate on) {
        var animal = animals.get(by, number);
        var diary = theirs(by, animal, careRecords.diary(by, animal.id()));
        return leaving(animal, diary, profile(by), Objects.requireNonNullElse(on, today()));
    }

    /** The same of many animals of the asker's own, today, in their order. A fixed number of queries for any number of them. */
    @Transactional
    public List<LeavingView> readiness(Standing by, List<AnimalView> held) {
        var diaries = careRecords.diaries(by, held.stream().map(AnimalView::id).toList());
        var profile = profile(by);
        return held.stream()
                .map(animal -> leaving(animal, diaries.getOrDefault(animal.id(), Diary.of()), profile, today()))
                .toList();
    }

    /**
     * The latest test by agent.
     *
     * @param on null: today
     */
    @Transactional
    public List<CountedTest> tests(Standing by, String number, @Nullable LocalDate on) {
        var animal = animals.get(by, number);
        var diary = theirs(by, animal, careRecords.diary(by, animal.id()));
        return CountedTest.of(diary, Objects.requireNonNullElse(on, today()));
    }

    /** The young of a litter that the asker sees; refuses with NO_SUCH_LITTER. */
    @Transactional
    public LitterBoard board(Standing by, UUID litterId) {
        var litter = litters.get(by, litterId);
        var young = byId(by, litter.young());
        var diaries = new HashMap<>(careRecords.diaries(by, young.keySet()));
        var profile = profile(by);
        var own = keepers.collectionIds(by);
        var rows = new ArrayList<BoardRow>();
        for (var animal : young.values()) {
            var siblings = siblings(animal, young.values(), diaries);
            rows.add(row(animal, diaries.getOrDefault(animal.id(), Diary.of()), siblings, profile, own));
        }
        rows.sort((one, other) -> Integer.compare(
                litter.young().indexOf(one.animal()), litter.young().indexOf(other.animal())));
        return new LitterBoard(litterId, litter.born(), today(), rows);
    }

    private BoardRow row(AnimalView animal, Diary diary, List<Diary> siblings, TaxonProfile profile, Set<UUID> own) {
        var leaving = leaving(animal, diary, profile, today());
        var meal = diary.lastMeal();
        var mass = diary.lastWeighing();
        return new BoardRow(
                animal.number(),
                animal.alive(),
                isHeld(animal, own),
                diary.sheds().size(),
                diary.meals().size(),
                diary.mealsInARow(),
                meal.map(CareRecord::on).orElse(null),
                meal.map(CareRecord.Meal::outcome).orElse(null),
                mass.map(Diary.Weighing::on).orElse(null),
                mass.map(last -> Mass.grams(last.milligrams())).orElse(null),
                diary.lastMove().map(CareRecord.Move::place).orElse(null),
                animal.alive() ? Siblings.behind(diary, siblings, today()) : List.of(),
                leaving.ready() && animal.alive(),
                leaving.conditions().stream()
                        .filter(condition -> condition.state() != Readiness.State.MET)
                        .map(LeavingCondition::name)
                        .toList(),
                leaving.expected());
    }

    private static LeavingView leaving(AnimalView animal, Diary diary, TaxonProfile profile, LocalDate on) {
        var photographs = animal.held() == null ? null : animal.held().photos().size();
        var readiness = Readiness.of(new Young(animal.born(), animal.sex(), photographs), diary, profile.rearing(), on);
        return new LeavingView(
                animal.number(),
                on,
                readiness.ready() && animal.alive(),
                readiness.established(),
                readiness.conditions(),
                animal.alive() ? LeavingWindow.of(animal.born(), diary, profile.rearing(), on) : null);
    }

    private Family family(Standing by, String number) {
        var animal = animals.get(by, number);
        var litter = animal.litter() == null
                ? Map.of(animal.id(), animal)
                : byId(
                        by,
                        offspring
                                .numbersOfLitters(by.populationId(), Set.of(animal.litter()))
                                .getOrDefault(animal.litter(), List.of()));
        var diaries = careRecords.diaries(by, litter.keySet());
        var diary = theirs(by, animal, diaries.getOrDefault(animal.id(), Diary.of()));
        return new Family(animal, diary, siblings(animal, litter.values(), diaries));
    }

    private Map<UUID, AnimalView> byId(Standing by, List<String> numbers) {
        var byId = new HashMap<UUID, AnimalView>();
        animals.known(by, numbers, List.of(), false).byNumber().values().stream()
                .map(KnownAnimal::view)
                .forEach(animal -> byId.put(animal.id(), animal));
        return byId;
    }

    /** The diaries of the others that live. */
    private static List<Diary> siblings(AnimalView animal, Collection<AnimalView> litter, Map<UUID, Diary> diaries) {
        return litter.stream()
                .filter(other -> !other.id().equals(animal.id()) && other.alive() && other.sameAs() == null)
                .map(other -> diaries.getOrDefault(other.id(), Diary.of()))
                .toList();
    }

    private Diary theirs(Standing by, AnimalView animal, Diary diary) {
        if (!isHeld(animal, keepers.collectionIds(by)) && diary.records().isEmpty()) {
            throw new Refusal(
                    NOT_YOUR_ANIMAL,
                    "%s is not in a collection of yours, and you wrote nothing down of it; ask who holds it."
                            .formatted(animal.number()));
        }
        return diary;
    }

    /** Whether it lives in one of these collections or is owned by one; where it lives may also be granted to others. */
    private static boolean isHeld(AnimalView animal, Set<UUID> own) {
        var held = animal.held();
        return held != null
                && (held.collection() != null && own.contains(held.collection())
                        || held.owner() != null && own.contains(held.owner()));
    }

    private TaxonProfile profile(Standing by) {
        return populations.get(by).profile();
    }

    private LocalDate today() {
        return LocalDate.now(clock);
    }
}
