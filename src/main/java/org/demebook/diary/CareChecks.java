package org.demebook.diary;

import static org.demebook.problem.ProblemType.ANIMAL_MERGED;
import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.ProblemType.MISTYPED_NUMBER;
import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.problem.Finding;
import org.demebook.problem.Refusal;
import org.demebook.registry.Animals;
import org.demebook.registry.Breach;
import org.demebook.registry.Kin;
import org.demebook.registry.KnownAnimals.KnownAnimal;
import org.demebook.registry.Populations;
import org.demebook.taxon.TaxonProfile;
import org.jspecify.annotations.Nullable;

/** Looks at what was sent beside what is known of the animals; collects every breach, refuses nothing, writes nothing. */
@ApplicationScoped
class CareChecks {
    /** A record that may be written. */
    record Checked(UUID animalId, String number, UUID collectionId, CareRecord record) {}

    /** What is known before: of the asker, of the animals by number, and their diaries by id. */
    private record Known(
            Set<UUID> own, TaxonProfile profile, Map<String, KnownAnimal> animals, Map<UUID, Diary> diaries) {}

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Populations populations;

    @Inject
    Clock clock;

    /** One record of an animal that the address names. */
    List<Checked> one(Standing by, String typed, StatedCareRecord stated, List<Breach> breaches) {
        var number = Animals.number(typed).toString();
        if (stated.animal() != null
                && !Animals.number(stated.animal()).toString().equals(number)) {
            breaches.add(Breach.error(
                    INVALID_VALUES,
                    "animal",
                    stated.animal(),
                    "The address says %s and the body says %s; which animal is it?"
                            .formatted(number, stated.animal())));
        }
        return check(by, number, stated, known(by, Set.of(number)), breaches).stream()
                .toList();
    }

    /** Records of many animals; the field of each breach begins with {@code records[i]}. */
    List<Checked> all(Standing by, List<StatedCareRecord> stated, List<Breach> breaches) {
        var numbers = numbers(stated, breaches);
        var known = known(by, numbers.stream().filter(Objects::nonNull).collect(Collectors.toSet()));
        var checked = new ArrayList<Checked>();
        for (int i = 0; i < stated.size(); i++) {
            var number = numbers.get(i);
            if (number == null) {
                continue;
            }
            var part = "records[%d]".formatted(i);
            var found = new ArrayList<Breach>();
            check(by, number, stated.get(i), known, found).ifPresent(one -> {
                checked.add(one);
                // the next record of the same animal is looked at beside this one
                known.diaries.merge(one.animalId(), Diary.of(one.record()), (diary, more) -> diary.with(one.record()));
            });
            found.forEach(breach -> breaches.add(breach.within(part)));
        }
        return checked;
    }

    /** A record that is there already, stated anew. */
    Optional<CareRecord> again(Standing by, CareRecordRow row, StatedCareRecord stated, List<Breach> breaches) {
        var others = new Diary(
                CareRecordRow.seen(by.populationId(), keepers.collectionIds(by), Set.of(row.animalId)).stream()
                        .filter(other -> !other.id.equals(row.id))
                        .map(other -> other.record)
                        .toList());
        var animal = animals.custody(by.populationId(), row.animalId);
        var kin = new Kin(animal.number(), animal.sex(), animal.born(), animal.died());
        var record = CareRecordReader.read(stated, breaches);
        record.ifPresent(one -> breaches.addAll(CareRules.check(one, kin, others, profile(by), LocalDate.now(clock))));
        return record;
    }

    /** A record that is there already, and what is worth a second look about it. */
    record LookedAt(CareRecordRow row, String number, List<Finding> warnings) {}

    /** Looks at records again beside all others of their animals; a fixed number of reads. */
    List<LookedAt> lookedAt(Standing by, List<CareRecordRow> rows) {
        var ids = rows.stream().map(row -> row.animalId).collect(Collectors.toSet());
        var custodies = animals.custodies(by.populationId(), ids);
        var others = new HashMap<UUID, List<CareRecordRow>>();
        CareRecordRow.seen(by.populationId(), keepers.collectionIds(by), ids)
                .forEach(row -> others.computeIfAbsent(row.animalId, id -> new ArrayList<>())
                        .add(row));
        var profile = profile(by);
        var looked = new ArrayList<LookedAt>();
        for (var row : rows) {
            var animal = custodies.get(row.animalId);
            var kin = new Kin(animal.number(), animal.sex(), animal.born(), animal.died());
            var diary = new Diary(others.get(row.animalId).stream()
                    .filter(other -> !other.id.equals(row.id))
                    .map(other -> other.record)
                    .toList());
            var breaches = CareRules.check(row.record, kin, diary, profile, LocalDate.now(clock));
            looked.add(new LookedAt(
                    row, animal.number(), breaches.stream().map(Breach::finding).toList()));
        }
        return looked;
    }

    Map<UUID, Diary> diaries(Standing by, Set<UUID> own, Collection<UUID> animalIds) {
        var records = new HashMap<UUID, List<CareRecord>>();
        for (var row : CareRecordRow.seen(by.populationId(), own, animalIds)) {
            records.computeIfAbsent(row.animalId, id -> new ArrayList<>()).add(row.record);
        }
        var diaries = new HashMap<UUID, Diary>();
        records.forEach((animalId, list) -> diaries.put(animalId, new Diary(list)));
        return diaries;
    }

    private Known known(Standing by, Set<String> numbers) {
        var own = keepers.collectionIds(by);
        var known = animals.known(by, numbers, List.of(), false).byNumber();
        var ids = known.values().stream().map(animal -> animal.view().id()).toList();
        return new Known(own, profile(by), known, diaries(by, own, ids));
    }

    private TaxonProfile profile(Standing by) {
        return populations.get(by).profile();
    }

    /** Studbook numbers as they are written here; null where one is missing or mistyped, which is then a breach. */
    private static List<@Nullable String> numbers(List<StatedCareRecord> stated, List<Breach> breaches) {
        var numbers = new ArrayList<@Nullable String>();
        for (int i = 0; i < stated.size(); i++) {
            var field = "records[%d].animal".formatted(i);
            var typed = stated.get(i).animal();
            String number = null;
            if (typed == null || typed.isBlank()) {
                breaches.add(Breach.error(INVALID_VALUES, field, typed, "Say which animal this is of."));
            } else {
                try {
                    number = Animals.number(typed).toString();
                } catch (Refusal mistyped) {
                    breaches.add(Breach.error(MISTYPED_NUMBER, field, typed, mistyped.detail()));
                }
            }
            numbers.add(number);
        }
        return numbers;
    }

    private Optional<Checked> check(
            Standing by, String number, StatedCareRecord stated, Known known, List<Breach> breaches) {
        var animal = known.animals.get(number);
        if (animal == null) {
            breaches.add(Breach.error(
                    NO_SUCH_ANIMAL,
                    "animal",
                    number,
                    "No animal of %s has the number %s.".formatted(by.populationCode(), number)));
            return Optional.empty();
        }
        var view = animal.view();
        var collectionId = view.held() == null ? null : view.held().collection();
        if (collectionId == null || !known.own.contains(collectionId)) {
            breaches.add(Breach.error(
                    NOT_YOUR_ANIMAL,
                    "animal",
                    number,
                    "%s is not in a collection of yours; only who holds it may do this.".formatted(number)));
            return Optional.empty();
        }
        if (view.sameAs() != null) {
            breaches.add(Breach.error(
                    ANIMAL_MERGED,
                    "animal",
                    number,
                    "%s was found to be %s; write it down there.".formatted(number, view.sameAs())));
            return Optional.empty();
        }
        var diary = known.diaries.getOrDefault(view.id(), Diary.of());
        var record = CareRecordReader.read(stated, breaches);
        record.ifPresent(
                one -> breaches.addAll(CareRules.check(one, animal.kin(), diary, known.profile, LocalDate.now(clock))));
        return record.map(one -> new Checked(view.id(), number, collectionId, one));
    }
}
