package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.notation.Sex;
import org.demebook.wall.WholeRegister;

/** The young of dams and of litters, for the room that keeps litters and those that read them. */
@ApplicationScoped
public class Offspring {
    /** The studbook numbers of the young of each litter, in order; a litter without young is left out. */
    @WholeRegister
    @Transactional
    public Map<UUID, List<String>> numbersOfLitters(UUID populationId, Set<UUID> litterIds) {
        return Animal.ofLitters(populationId, litterIds).stream()
                .collect(Collectors.groupingBy(
                        animal -> animal.litterId, Collectors.mapping(animal -> animal.number, Collectors.toList())));
    }

    /** The young of a dam, by any of her records, that no litter of this register brought, in order. */
    @Transactional
    public List<Custody> bornOutsideLitters(UUID populationId, Set<UUID> damIds) {
        return Animal.bornOutsideLitters(populationId, damIds).stream()
                .map(Custody::of)
                .toList();
    }

    /** The young of a litter, dead or alive, in the order of their numbers. */
    @WholeRegister
    @Transactional
    public List<Custody> ofLitter(UUID populationId, UUID litterId) {
        return Animal.ofLitters(populationId, List.of(litterId)).stream()
                .map(Custody::of)
                .toList();
    }

    /** How many young of this register's litters are of each sex; those whose sex is not known are in neither. */
    @WholeRegister
    @Transactional
    public Map<Sex, Integer> sexesOfLitters(UUID populationId) {
        var counts = new EnumMap<Sex, Integer>(Sex.class);
        for (var sex : List.of(Sex.MALE, Sex.FEMALE)) {
            counts.put(sex, (int) Animal.count(
                    "populationId = ?1 and litterId is not null and sameAsId is null and sex = ?2", populationId, sex));
        }
        return counts;
    }
}
