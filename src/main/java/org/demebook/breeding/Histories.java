package org.demebook.breeding;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.gestation.Interval;
import org.demebook.gestation.Meeting;
import org.demebook.litter.Birth;
import org.demebook.litter.Births;
import org.demebook.registry.Animals;
import org.demebook.registry.Custody;
import org.demebook.taxon.BirthMode;
import org.demebook.transfer.Departures;
import org.demebook.transfer.Departures.Departure;
import org.demebook.wall.WholeRegister;

/** Reads what was recorded of females: their signs, their births, whom they met. A few queries for any number of them. */
@ApplicationScoped
class Histories {
    /** One female's records, in the order of their days. */
    record History(List<Sign> signs, List<Birth> births) {
        static final History EMPTY = new History(List.of(), List.of());

        Cycle cycle(BirthMode mode, LocalDate on) {
            return Cycle.of(mode, signs, births, on);
        }

        List<Interval> intervals(BirthMode mode) {
            return births.stream()
                    .flatMap(birth -> Cycle.interval(birth, mode, signs, births).stream())
                    .toList();
        }
    }

    @Inject
    Births births;

    @Inject
    Animals animals;

    @Inject
    Departures departures;

    @Transactional
    History of(UUID populationId, UUID femaleId) {
        return of(populationId, List.of(femaleId)).getOrDefault(femaleId, History.EMPTY);
    }

    /** By female; one of whom nothing is recorded is left out. */
    @Transactional
    Map<UUID, History> of(UUID populationId, Collection<UUID> femaleIds) {
        return histories(BreedingSign.ofFemales(populationId, femaleIds), births.of(populationId, femaleIds));
    }

    /** The intervals of all females of a population, by female. */
    @WholeRegister
    @Transactional
    Map<UUID, List<Interval>> intervals(UUID populationId, BirthMode mode) {
        var histories = histories(BreedingSign.landmarks(populationId), births.of(populationId));
        return histories.entrySet().stream().collect(Collectors.toMap(Map.Entry::getKey, entry -> entry.getValue()
                .intervals(mode)));
    }

    private static Map<UUID, History> histories(List<BreedingSign> signs, List<Birth> births) {
        var histories = new HashMap<UUID, History>();
        for (var sign : signs) {
            histories
                    .computeIfAbsent(sign.femaleId, id -> new History(new ArrayList<>(), new ArrayList<>()))
                    .signs()
                    .add(sign.sign());
        }
        for (var birth : births) {
            histories
                    .computeIfAbsent(birth.damId(), id -> new History(new ArrayList<>(), new ArrayList<>()))
                    .births()
                    .add(birth);
        }
        return histories;
    }

    /**
     * When a female could mate with whom: introductions, each up to the day of separation, death or departure of one of the
     * two, and copulations seen.
     *
     * @param untilOn what goes on then is cut off then
     */
    @Transactional
    List<Meeting> meetings(UUID populationId, UUID femaleId, LocalDate untilOn) {
        return meetings(populationId, List.of(femaleId), untilOn).getOrDefault(femaleId, List.of());
    }

    /** The same of many females; one who met nobody is left out. */
    @Transactional
    Map<UUID, List<Meeting>> meetings(UUID populationId, Collection<UUID> femaleIds, LocalDate untilOn) {
        var introductions = Introduction.ofFemales(populationId, femaleIds);
        var signs = BreedingSign.ofFemales(populationId, femaleIds).stream()
                .filter(sign -> sign.kind == SignKind.COPULATION && sign.maleId != null)
                .toList();
        var met = new HashSet<UUID>(femaleIds);
        introductions.forEach(introduction -> met.add(introduction.maleId));
        var left = departures.of(populationId, met);
        var custodies = animals.custodies(populationId, met);

        var meetings = new HashMap<UUID, List<Meeting>>();
        for (var introduction : introductions) {
            var last = lastDay(introduction, untilOn, custodies, left);
            var seen = signs.stream()
                    .anyMatch(sign -> introduction.femaleId.equals(sign.femaleId)
                            && introduction.maleId.equals(sign.maleId)
                            && !sign.happenedOn.isBefore(introduction.fromOn)
                            && !sign.happenedOn.isAfter(last));
            meetings.computeIfAbsent(introduction.femaleId, id -> new ArrayList<>())
                    .add(new Meeting(introduction.maleId, introduction.fromOn, last, seen));
        }
        signs.stream().filter(sign -> !sign.happenedOn.isAfter(untilOn)).forEach(sign -> meetings.computeIfAbsent(
                        sign.femaleId, id -> new ArrayList<>())
                .add(new Meeting(sign.maleId, sign.happenedOn, sign.happenedOn, true)));
        return meetings;
    }

    private static LocalDate lastDay(
            Introduction introduction, LocalDate untilOn, Map<UUID, Custody> custodies, List<Departure> left) {
        var last =
                introduction.untilOn == null || introduction.untilOn.isAfter(untilOn) ? untilOn : introduction.untilOn;
        for (var animalId : List.of(introduction.femaleId, introduction.maleId)) {
            var died = custodies.get(animalId).died();
            if (died != null && died.latest() != null && died.latest().isBefore(last)) {
                last = died.latest();
            }
            for (var departure : left) {
                if (departure.animalId().equals(animalId)
                        && departure.fromCollectionId().equals(introduction.collectionId)
                        && !departure.on().isBefore(introduction.fromOn)
                        && departure.on().isBefore(last)) {
                    last = departure.on();
                }
            }
        }
        return last.isBefore(introduction.fromOn) ? introduction.fromOn : last;
    }
}
