package org.demebook.crossing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.crossing.CrossingView.ToldForebear;
import org.demebook.federation.Federations;
import org.demebook.notation.Sex;
import org.demebook.notation.StudbookNumber;
import org.demebook.protocol.AnimalId;
import org.demebook.registry.Animals;
import org.demebook.registry.Populations;
import org.demebook.telling.SingleAnimals;
import org.demebook.telling.ToldAnimal;
import org.jspecify.annotations.Nullable;

/** Animals that this node holds since it adopted them, and that stand in this register with nobody. */
@ApplicationScoped
class WaitingAnimals {
    private static final int WHOLE = 1_000_000;

    @Inject
    Animals animals;

    @Inject
    Federations federations;

    @Inject
    Populations populations;

    @Inject
    CrossingOffers offers;

    @Inject
    SingleAnimals tellings;

    /**
     * @param from id of the node that is gone
     * @param code of that node
     * @param record in this register from before; null where it was never here
     * @param number of that record, or as it was told; null where it is not known
     */
    record Waiting(
            AnimalId animal,
            String from,
            String code,
            @Nullable UUID record,
            @Nullable StudbookNumber number,
            ToldAnimal told) {}

    /** None where the population is kept on this node alone. */
    List<Waiting> of(UUID population) {
        if (!federations.isShared(population)) {
            return List.of();
        }
        var adopted = federations.reading(population, participant -> participant.adopted());
        if (adopted.isEmpty()) {
            return List.of();
        }
        var records = new HashMap<AnimalId, UUID>();
        federations.animalIds(population).forEach((record, id) -> records.put(id, record));
        var same = federations.reading(
                population, participant -> participant.told().sameAs());
        var here =
                records.keySet().stream().map(id -> same.getOrDefault(id, id)).collect(Collectors.toSet());
        var told = tellings.of(population, adopted.keySet());
        var waiting = new ArrayList<Waiting>();
        adopted.forEach((animal, from) -> {
            var record = records.get(animal);
            // one that was found to be an animal of this register is with that one's keeper
            var isHere =
                    record == null ? here.contains(same.getOrDefault(animal, animal)) : !isAway(population, record);
            if (!isHere && told.get(animal).alive()) {
                waiting.add(waiting(population, animal, from, record, told.get(animal)));
            }
        });
        return waiting;
    }

    private boolean isAway(UUID population, UUID record) {
        return !animals.custody(population, record).merged()
                && offers.of(population, record).filter(away -> !away.held()).isPresent();
    }

    private Waiting waiting(UUID population, AnimalId animal, String from, @Nullable UUID record, ToldAnimal told) {
        var number = record == null
                ? told.number()
                : StudbookNumber.parse(animals.custody(population, record).number());
        var isOne = number != null && (record != null || isNumberOf(population, animal, number));
        return new Waiting(animal, from, code(population, from), record, isOne ? number : null, told);
    }

    /** Numbers are the registering node's to give. */
    boolean isNumberOf(UUID population, AnimalId animal, StudbookNumber number) {
        return number.populationCode().equals(populations.codeOf(population))
                && federations
                        .codeOfNode(population, animal.node())
                        .filter(number.nodeCode()::equals)
                        .isPresent();
    }

    /** Code of a node; its id where it has no seat any more. */
    String code(UUID population, String node) {
        return federations.codeOfNode(population, node).orElse(node);
    }

    AdoptedAnimalView view(Waiting waiting) {
        var told = waiting.told;
        var parents = new ArrayList<ToldForebear>();
        if (told.dam() != null) {
            parents.add(new ToldForebear("dam", told.dam().toString(), null, null, null));
        }
        told.sires()
                .forEach(sire -> parents.add(new ToldForebear(
                        "sire",
                        sire.number().toString(),
                        null,
                        null,
                        sire.millionths() == WHOLE ? null : sire.millionths() / (WHOLE / 100))));
        return new AdoptedAnimalView(
                waiting.animal.toString(),
                waiting.code,
                waiting.record != null,
                waiting.number == null ? null : waiting.number.toString(),
                told.sex() == Sex.UNKNOWN ? null : told.sex(),
                told.born(),
                parents);
    }
}
