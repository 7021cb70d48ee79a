package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.consent.Projection;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Regions;
import org.demebook.keeper.Standing;
import org.demebook.photo.PhotoView;
import org.demebook.photo.Photos;
import org.demebook.registry.StatedSire.StatedCandidate;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/** Shows animals to one asker: the only place where a row becomes a view. A fixed number of queries for any number of rows. */
@ApplicationScoped
class AnimalViews {
    private static final Set<FieldGroup> GRANTED_SELDOM = EnumSet.of(
            FieldGroup.CUSTODY,
            FieldGroup.COARSE_PLACE,
            FieldGroup.HEALTH,
            FieldGroup.MARKS_AND_PHOTOS,
            FieldGroup.NOTES);

    @Inject
    Keepers keepers;

    @Inject
    Regions regions;

    @Inject
    Photos photos;

    @Inject
    AnimalSight sight;

    AnimalView of(Standing by, Animal animal) {
        return of(by, List.of(animal)).get(0);
    }

    /** @param animals that the asker sees */
    List<AnimalView> of(Standing by, List<Animal> animals) {
        return of(by, animals, Set.of());
    }

    /** @param shown what is shown of them in any case, since both sides of a transfer have agreed to it */
    List<AnimalView> of(Standing by, List<Animal> animals, Set<FieldGroup> shown) {
        var lens = sight.lens(by);
        var candidates = candidatesOf(by.populationId(), animals);
        var kin = kinOf(by.populationId(), animals, candidates);
        var own = keepers.collectionIds(by);
        var held = shown.isEmpty()
                ? held(by.populationId(), animals, own, lens)
                : heldByAgreement(by.populationId(), animals, own, lens);
        var seen = animals.stream()
                .map(animal -> Projection.of(
                        view(
                                animal,
                                candidates.getOrDefault(animal.id, List.of()),
                                kin.numbers,
                                kin.twins.getOrDefault(animal.id, List.of()),
                                isOwn(animal, own),
                                held.get(animal.id)),
                        group -> isOwn(animal, own) || shown.contains(group) || AnimalSight.shows(lens, animal, group)))
                .toList();
        sight.disclosed(lens);
        return seen;
    }

    private static boolean isOwn(Animal animal, Set<UUID> own) {
        return own.contains(animal.collectionId) || own.contains(animal.ownerCollectionId);
    }

    /** Numbers of parents, by id, and twins, by animal. */
    record NamedKin(Map<UUID, String> numbers, Map<UUID, List<AnimalView.Twin>> twins) {}

    /** The number of a parent or twin belongs to what its child is shown with, whoever sees the parent. */
    @WholeRegister
    NamedKin kinOf(UUID populationId, List<Animal> animals, Map<UUID, List<CandidateSire>> candidates) {
        return new NamedKin(numbersOf(populationId, animals, candidates), twinsOf(populationId, animals));
    }

    @WholeRegister
    Map<UUID, AnimalView.Held> heldByAgreement(UUID populationId, List<Animal> animals, Set<UUID> own, Lens lens) {
        return held(populationId, animals, own, lens);
    }

    /** Of those of which the asker sees any of it. */
    private Map<UUID, AnimalView.Held> held(UUID populationId, List<Animal> animals, Set<UUID> own, Lens lens) {
        var inHand = animals.stream()
                .filter(animal -> isOwn(animal, own)
                        || GRANTED_SELDOM.stream().anyMatch(group -> AnimalSight.shows(lens, animal, group)))
                .toList();
        var ids = inHand.stream().map(animal -> animal.id).toList();
        var identifiers = Identifier.of(populationId, ids).stream()
                // a reference is its keeper's alone, wherever the animal goes
                .filter(identifier -> identifier.collectionId == null || own.contains(identifier.collectionId))
                .collect(Collectors.groupingBy(identifier -> identifier.animalId));
        var pictures = photos.ofAnimals(populationId, ids);
        var places = regions.stated(populationId);
        var sexes = DeterminedSex.of(populationId, ids).stream().collect(Collectors.groupingBy(sex -> sex.animalId));
        return inHand.stream()
                .collect(Collectors.toMap(
                        animal -> animal.id,
                        animal -> held(
                                animal,
                                animal.collectionId == null ? null : places.get(animal.collectionId),
                                sexes.getOrDefault(animal.id, List.of()),
                                identifiers.getOrDefault(animal.id, List.of()),
                                pictures.getOrDefault(animal.id, List.of()))));
    }

    private static AnimalView view(
            Animal animal,
            List<CandidateSire> candidates,
            Map<UUID, String> numbers,
            List<AnimalView.Twin> twins,
            boolean own,
            AnimalView.@Nullable Held held) {
        return new AnimalView(
                animal.id,
                animal.number,
                animal.sex,
                animal.born,
                animal.alive(),
                animal.origin,
                animal.localityClaim(),
                animal.damId == null ? null : numbers.get(animal.damId),
                sire(animal, candidates, numbers),
                animal.litterId,
                twins,
                animal.sameAsId == null ? null : numbers.get(animal.sameAsId),
                own ? animal.revision : null,
                held);
    }

    static StatedSire sire(Animal animal, List<CandidateSire> candidates, Map<UUID, String> numbers) {
        return switch (animal.sireKind) {
            case "known" -> known(numbers.get(animal.sireId), animal.sireDoubtful);
            case "candidates" ->
                StatedSire.candidates(
                        candidates.stream()
                                .map(candidate -> new StatedCandidate(
                                        numbers.get(candidate.sireId), candidate.probability.stripTrailingZeros()))
                                .toList(),
                        animal.sireDrawId != null);
            case "none" ->
                StatedSire.none(
                        animal.fusion,
                        animal.secondDivision == null ? null : animal.secondDivision.stripTrailingZeros());
            default -> StatedSire.UNKNOWN;
        };
    }

    private static StatedSire known(String number, boolean doubtful) {
        return doubtful ? StatedSire.doubted(number) : StatedSire.known(number);
    }

    private static AnimalView.Held held(
            Animal animal,
            @Nullable String region,
            List<DeterminedSex> sexes,
            List<Identifier> identifiers,
            List<PhotoView> photos) {
        return new AnimalView.Held(
                animal.collectionId,
                animal.ownerCollectionId != null && !animal.ownerCollectionId.equals(animal.collectionId)
                        ? animal.ownerCollectionId
                        : null,
                region,
                animal.died,
                animal.deathCause,
                animal.sourceCode,
                animal.malformed,
                sexes(animal, sexes),
                identifiers.stream()
                        // of several references first the one of the collection in which it lives
                        .sorted(Comparator.comparing((Identifier identifier) -> identifier.kind)
                                .thenComparing(identifier -> identifier.collectionId != null
                                        && !identifier.collectionId.equals(animal.collectionId))
                                .thenComparing(identifier -> identifier.value))
                        .map(Identifier::view)
                        .toList(),
                photos,
                animal.notes);
    }

    /** Of each animal its twins: whom it was stated to be a twin of, and who was stated to be one of it. */
    private static Map<UUID, List<AnimalView.Twin>> twinsOf(UUID populationId, List<Animal> animals) {
        var born = animals.stream()
                .filter(animal -> animal.litterId != null)
                .map(animal -> animal.id)
                .toList();
        var earlier = animals.stream()
                .filter(animal -> animal.twinOfId != null)
                .map(animal -> animal.twinOfId)
                .toList();
        var numbers = Animal.numbersOf(populationId, earlier);
        var twins = new HashMap<UUID, List<AnimalView.Twin>>();
        for (var animal : animals) {
            if (animal.twinOfId != null) {
                add(twins, animal.id, numbers.get(animal.twinOfId), animal.twinKind);
            }
        }
        for (var later : Animal.twinsOf(populationId, born)) {
            add(twins, Objects.requireNonNull(later.twinOfId), later.number, later.twinKind);
        }
        return twins;
    }

    private static void add(
            Map<UUID, List<AnimalView.Twin>> twins, UUID animalId, String number, @Nullable TwinKind kind) {
        twins.computeIfAbsent(animalId, id -> new ArrayList<>())
                .add(new AnimalView.Twin(number, Objects.requireNonNull(kind)));
    }

    /** Until a sex is determined anew, what was registered is the only determination. */
    private static List<AnimalView.DeterminedSexView> sexes(Animal animal, List<DeterminedSex> sexes) {
        return sexes.isEmpty() && animal.sexMethod != null
                ? List.of(new AnimalView.DeterminedSexView(animal.sex, animal.sexMethod, animal.sexConfidence, null))
                : sexes.stream().map(DeterminedSex::view).toList();
    }

    private static Map<UUID, List<CandidateSire>> candidatesOf(UUID populationId, List<Animal> animals) {
        var uncertain = animals.stream()
                .filter(animal -> animal.sireKind.equals("candidates"))
                .map(animal -> animal.id)
                .toList();
        return CandidateSire.of(populationId, uncertain).stream()
                .collect(Collectors.groupingBy(candidate -> candidate.animalId));
    }

    private static Map<UUID, String> numbersOf(
            UUID populationId, List<Animal> animals, Map<UUID, List<CandidateSire>> candidates) {
        Set<UUID> ids = new HashSet<>();
        for (var animal : animals) {
            addIfThere(ids, animal.damId);
            addIfThere(ids, animal.sireId);
            addIfThere(ids, animal.sameAsId);
        }
        candidates.values().stream().flatMap(Collection::stream).forEach(candidate -> ids.add(candidate.sireId));
        return Animal.numbersOf(populationId, ids);
    }

    private static void addIfThere(Set<UUID> ids, @Nullable UUID id) {
        if (id != null) {
            ids.add(id);
        }
    }
}
