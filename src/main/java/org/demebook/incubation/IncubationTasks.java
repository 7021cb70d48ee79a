package org.demebook.incubation;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.demebook.care.CareKind;
import org.demebook.care.CareTask;
import org.demebook.care.CareTaskSource;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.litter.Births;

/** An incubator with eggs in it is read every day (common practice, no source), until they have hatched. */
@ApplicationScoped
class IncubationTasks implements CareTaskSource {
    /** No clutch takes longer. */
    private static final int DAYS_AT_MOST = 200;

    @Inject
    Keepers keepers;

    @Inject
    Births births;

    @Override
    @Transactional
    public List<CareTask> tasks(Standing by, LocalDate today) {
        List<Incubation> running = Incubation.list(
                "populationId = ?1 and collectionId in ?2 and startedOn > ?3 order by id",
                by.populationId(),
                keepers.collectionIds(by),
                today.minusDays(DAYS_AT_MOST));
        var born = births
                .of(
                        by.populationId(),
                        running.stream().map(incubation -> incubation.femaleId).collect(Collectors.toSet()))
                .stream()
                .collect(Collectors.groupingBy(birth -> birth.damId()));
        var readings =
                IncubationReading.of(
                                by.populationId(),
                                running.stream()
                                        .map(incubation -> incubation.id)
                                        .toList())
                        .stream()
                        .collect(Collectors.groupingBy(reading -> reading.incubationId));
        var tasks = new ArrayList<CareTask>();
        for (var incubation : running) {
            var hatched = born.getOrDefault(incubation.femaleId, List.of()).stream()
                    .anyMatch(birth -> !birth.born().surelyBefore(incubation.startedOn));
            if (!hatched) {
                var read = readings.getOrDefault(incubation.id, List.of());
                var last =
                        read.isEmpty() ? incubation.startedOn : LocalDate.ofInstant(read.get(0).readAt, ZoneOffset.UTC);
                tasks.add(task(incubation, last.plusDays(1)));
            }
        }
        return tasks;
    }

    private static CareTask task(Incubation incubation, LocalDate dueOn) {
        return new CareTask(
                "%s:%s:%s".formatted(CareKind.INCUBATION_CHECK.word(), incubation.id, dueOn),
                CareKind.INCUBATION_CHECK,
                incubation.femaleId,
                null,
                dueOn,
                null,
                null,
                "Read the thermometer of the incubator",
                "The eggs are incubated at %s °C since %s; a thermostat that fails is found by looking every day."
                        .formatted(incubation.setPointCelsius.toPlainString(), incubation.startedOn));
    }
}
