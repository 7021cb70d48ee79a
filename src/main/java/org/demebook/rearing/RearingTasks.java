package org.demebook.rearing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.care.CareTask;
import org.demebook.care.CareTaskSource;
import org.demebook.diary.CareRecords;
import org.demebook.diary.Diary;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.litter.Litters;
import org.demebook.rearing.TaskRules.InCare;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.registry.Populations;
import org.demebook.rest.Page;

/** What is to be done for young, their dams and newcomers. A fixed number of queries for each thousand animals in hand. */
@ApplicationScoped
class RearingTasks implements CareTaskSource {
    private static final int CHUNK = 1000;

    @Inject
    Animals animals;

    @Inject
    Litters litters;

    @Inject
    CareRecords careRecords;

    @Inject
    Keepers keepers;

    @Inject
    Populations populations;

    @Override
    @Transactional
    public List<CareTask> tasks(Standing by, LocalDate today) {
        var inHand = inHand(by);
        var diaries =
                careRecords.diaries(by, inHand.stream().map(AnimalView::id).toList());
        var rules = new TaskRules(populations.get(by).profile(), today);
        Map<UUID, List<InCare>> youngOfLitter = new LinkedHashMap<>();
        for (var animal : inHand) {
            var inCare = inCare(animal, diaries.getOrDefault(animal.id(), Diary.of()));
            rules.animal(inCare);
            if (inCare.litterId() != null && inCare.born() != null) {
                youngOfLitter
                        .computeIfAbsent(inCare.litterId(), id -> new ArrayList<>())
                        .add(inCare);
            }
        }
        youngOfLitter.forEach((litterId, young) -> rules.litter(litterId, born(young), young));
        addDams(by, today, inHand, diaries, rules);
        return rules.tasks();
    }

    private void addDams(
            Standing by, LocalDate today, List<AnimalView> inHand, Map<UUID, Diary> diaries, TaskRules rules) {
        var idOf = new HashMap<String, UUID>();
        inHand.forEach(animal -> idOf.put(animal.number(), animal.id()));
        for (var litter : litters.bornSince(by, today.minusDays(TaskRules.DAYS_OF_RECOVERY))) {
            var damId = idOf.get(litter.dam());
            if (damId != null) {
                litter.born()
                        .day()
                        .ifPresent(
                                born -> rules.dam(damId, litter.id(), born, diaries.getOrDefault(damId, Diary.of())));
            }
        }
    }

    /** The living animals that live in the asker's collections. */
    private List<AnimalView> inHand(Standing by) {
        var own = keepers.collectionIds(by);
        var inHand = new ArrayList<AnimalView>();
        String after = null;
        do {
            Page<AnimalView> page = animals.page(by, null, true, true, after, CHUNK);
            page.items().stream()
                    .filter(animal -> animal.sameAs() == null
                            && animal.held() != null
                            && animal.held().collection() != null
                            && own.contains(animal.held().collection()))
                    .forEach(inHand::add);
            after = Page.after(page.next());
        } while (after != null);
        return inHand;
    }

    private static InCare inCare(AnimalView animal, Diary diary) {
        return new InCare(
                animal.id(),
                animal.born() == null ? null : animal.born().day().orElse(null),
                animal.litter(),
                animal.held() == null ? 0 : animal.held().photos().size(),
                diary);
    }

    private static LocalDate born(List<InCare> young) {
        var born = young.get(0).born();
        if (born == null) {
            throw new IllegalStateException("young of a litter whose birth is known to the day");
        }
        return born;
    }
}
