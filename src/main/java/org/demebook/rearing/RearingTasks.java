package org.demebook.rearing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.care.CareTask;
import org.demebook.care.CareTaskSource;
import org.demebook.diary.CareRecords;
import org.demebook.diary.Diary;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.litter.LitterView;
import org.demebook.litter.Litters;
import org.demebook.rearing.TaskRules.InCare;
import org.demebook.registry.Populations;
import org.jspecify.annotations.Nullable;

/** What is to be done for young, their dams and newcomers. A fixed number of queries, about those animals alone of which a task may follow. */
@ApplicationScoped
class RearingTasks implements CareTaskSource {
    @Inject
    Litters litters;

    @Inject
    CareRecords careRecords;

    @Inject
    Keepers keepers;

    @Inject
    Populations populations;

    @Inject
    EntityManager entities;

    /** Who lives with the asker and is young, or named. */
    private static final String IN_HAND = """
            select a.id, a.number, a.bornEarliest, a.bornLatest, a.litterId from Animal a
            where a.populationId = :population and a.collectionId in :own and a.died is null and a.sameAsId is null
            and (a.bornLatest >= :since or a.id in :ids or a.number in :numbers)
            order by a.number
            """;

    private static final String PHOTOGRAPHS =
            "select p.animalId, count(p) from Photo p where p.populationId = :population and p.animalId in :ids group by p.animalId";

    /** @param born null where it is not known to the day */
    private record Lodger(
            UUID id,
            String number,
            @Nullable LocalDate born,
            @Nullable UUID litterId) {
        private static Lodger of(
                UUID id,
                String number,
                @Nullable LocalDate earliest,
                @Nullable LocalDate latest,
                @Nullable UUID litterId) {
            return new Lodger(id, number, earliest != null && earliest.equals(latest) ? earliest : null, litterId);
        }
    }

    @Override
    @Transactional
    public List<CareTask> tasks(Standing by, LocalDate today) {
        var births = litters.bornSince(by, today.minusDays(TaskRules.DAYS_OF_RECOVERY));
        var inHand = inHand(by, today, births);
        var ids = inHand.stream().map(Lodger::id).toList();
        var diaries = careRecords.diaries(by, ids);
        var photographs = photographs(by, ids);
        var rules = new TaskRules(populations.get(by).profile(), today);
        Map<UUID, List<InCare>> youngOfLitter = new LinkedHashMap<>();
        for (var animal : inHand) {
            var inCare = new InCare(
                    animal.id(),
                    animal.born(),
                    animal.litterId(),
                    photographs.getOrDefault(animal.id(), 0L).intValue(),
                    diaries.getOrDefault(animal.id(), Diary.of()));
            rules.animal(inCare);
            if (inCare.litterId() != null && inCare.born() != null) {
                youngOfLitter
                        .computeIfAbsent(inCare.litterId(), id -> new ArrayList<>())
                        .add(inCare);
            }
        }
        youngOfLitter.forEach((litterId, young) -> rules.litter(litterId, born(young), young));
        addDams(births, inHand, diaries, rules);
        return rules.tasks();
    }

    private static void addDams(
            List<LitterView> births, List<Lodger> inHand, Map<UUID, Diary> diaries, TaskRules rules) {
        var idOf = new HashMap<String, UUID>();
        inHand.forEach(animal -> idOf.put(animal.number(), animal.id()));
        for (var litter : births) {
            var damId = idOf.get(litter.dam());
            if (damId != null) {
                litter.born()
                        .day()
                        .ifPresent(
                                born -> rules.dam(damId, litter.id(), born, diaries.getOrDefault(damId, Diary.of())));
            }
        }
    }

    /** Those of whom a task may follow: young, dams, the tested and those in quarantine. Of all others none does. */
    private List<Lodger> inHand(Standing by, LocalDate today, List<LitterView> births) {
        var own = keepers.collectionIds(by);
        return entities.createQuery(IN_HAND, Object[].class)
                .setParameter("population", by.populationId())
                .setParameter("own", own)
                .setParameter("since", today.minusDays(TaskRules.DAYS_OF_A_YOUNG))
                .setParameter("ids", careRecords.animalsWith(by, List.of("test", "quarantine")))
                .setParameter("numbers", births.stream().map(LitterView::dam).toList())
                .getResultStream()
                .map(row -> Lodger.of(
                        (UUID) row[0], (String) row[1], (LocalDate) row[2], (LocalDate) row[3], (UUID) row[4]))
                .toList();
    }

    private Map<UUID, Long> photographs(Standing by, List<UUID> ids) {
        return ids.isEmpty()
                ? Map.of()
                : entities.createQuery(PHOTOGRAPHS, Object[].class)
                        .setParameter("population", by.populationId())
                        .setParameter("ids", ids)
                        .getResultStream()
                        .collect(Collectors.toMap(row -> (UUID) row[0], row -> (Long) row[1]));
    }

    private static LocalDate born(List<InCare> young) {
        var born = young.get(0).born();
        if (born == null) {
            throw new IllegalStateException("young of a litter whose birth is known to the day");
        }
        return born;
    }
}
