package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.keeper.Standing;
import org.demebook.problem.LeftAsIs;
import org.demebook.problem.Rule;
import org.demebook.registry.LocalityClaim.Certainty;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/** What is claimed of the localities of animals, and what their pedigrees make of it. */
@ApplicationScoped
public class Localities {
    /**
     * A locality as it is known now; it takes the place of what was claimed before.
     *
     * @param locality the population's when nothing is said
     * @param leave what is as it is although a rule speaks against it
     */
    public record StatedLocality(
            @Nullable @Size(max = LocalityClaim.LONGEST) String locality,
            @NotNull Certainty certainty,
            @Nullable @Size(max = 20) List<@NotNull @Valid LeftAsIs> leave) {
        LocalityClaim claim() {
            return new LocalityClaim(locality, certainty);
        }
    }

    @Inject
    Animals animals;

    @Inject
    AnimalSight sight;

    /** One animal and the ends of its pedigree, as far as the asker sees it. One query or two for each generation. */
    @WholeRegister
    @Transactional
    public LocalityView of(Standing by, String number) {
        return of(by, animals.require(by, number));
    }

    /**
     * Whether an animal, or an ancestor that the asker sees, is claimed to be of another locality than the population's, or
     * has a claim that does not hold.
     */
    @WholeRegister
    @Transactional
    public boolean isInDoubt(Standing by, UUID animalId) {
        return pedigree(by, Animal.of(by.populationId(), animalId)).inDoubt;
    }

    /**
     * The animals whose own claim says that they are of another locality than the population's, or does not hold. Never to be
     * shown but of animals that the asker may see. One query.
     */
    @WholeRegister
    @Transactional
    public Set<UUID> inDoubt(UUID populationId) {
        Population population = Population.findById(populationId);
        return Set.copyOf(Animal.getEntityManager()
                .createQuery(
                        "select a.id from Animal a where a.populationId = ?1 and a.sameAsId is null"
                                + " and (a.localityCertainty in ?2 or lower(trim(a.locality)) <> lower(?3))",
                        UUID.class)
                .setParameter(1, populationId)
                .setParameter(2, List.of(Certainty.DOUBTFUL, Certainty.UNKNOWN))
                .setParameter(3, population.locality.strip())
                .getResultList());
    }

    private static boolean isInDoubt(Animal animal, LocalityClaim own) {
        var claim = animal.localityClaim();
        return claim != null
                && (!claim.certainty().holds()
                        || claim.in(String.valueOf(own.locality())).isOfAnother(own));
    }

    private LocalityView of(Standing by, Animal animal) {
        return pedigree(by, animal).view(animal);
    }

    private Pedigree pedigree(Standing by, Animal animal) {
        Population population = Population.findById(animal.populationId);
        var own = new LocalityClaim(population.locality, Certainty.STATED);
        var pedigree = new Pedigree(own, sight.lens(by));
        Collection<UUID> next = List.of(animal.id);
        while (!next.isEmpty()) {
            next = pedigree.add(Animal.withIds(animal.populationId, next), sires(animal.populationId, next));
        }
        return pedigree;
    }

    private static Map<UUID, List<UUID>> sires(UUID populationId, Collection<UUID> ids) {
        return CandidateSire.of(populationId, ids).stream()
                .collect(Collectors.groupingBy(
                        candidate -> candidate.animalId,
                        Collectors.mapping(candidate -> candidate.sireId, Collectors.toList())));
    }

    /** A claim that the whole pedigree speaks against, though the parents themselves do not. */
    Optional<Breach> mixedFurtherUp(Standing by, Animal animal) {
        if (animal.localityClaim() == null) {
            return Optional.empty();
        }
        var view = of(by, animal);
        return !view.mixed()
                ? Optional.empty()
                : Optional.of(Breach.warning(
                        Rule.LOCALITY_MIXED,
                        "locality",
                        animal.locality,
                        "%s is claimed to be of %s, but its pedigree is %s: it is mixed, and never pure. Correct its claim, or that of the ancestor."
                                .formatted(animal.number, animal.localityClaim().words(), view.sentence()),
                        "The claim for the young."));
    }

    /** What was read of a pedigree, generation by generation. */
    private static final class Pedigree {
        private final LocalityClaim own;
        private final Lens lens;
        private final Set<UUID> seen = new HashSet<>();
        private final Map<String, LocalityClaim> surest = new LinkedHashMap<>();
        private Certainty weakest = Certainty.DOCUMENTED;
        private int lines;
        private int notEstablished;
        private boolean inDoubt;

        Pedigree(LocalityClaim own, Lens lens) {
            this.own = own;
            this.lens = lens;
        }

        /** @return the parents that were not seen yet */
        Set<UUID> add(List<Animal> generation, Map<UUID, List<UUID>> candidates) {
            var parents = new HashSet<UUID>();
            for (var animal : generation) {
                seen.add(animal.id);
                if (animal.sameAsId != null) {
                    parents.add(animal.sameAsId);
                    continue;
                }
                if (!AnimalSight.shows(lens, animal, FieldGroup.IDENTITY)) {
                    notKnown();
                    continue;
                }
                inDoubt |= isInDoubt(animal, own);
                if (!AnimalSight.shows(lens, animal, FieldGroup.PARENTAGE)) {
                    founder(animal);
                    continue;
                }
                var known = new ArrayList<>(candidates.getOrDefault(animal.id, List.of()));
                if (animal.sireId != null) {
                    known.add(animal.sireId);
                }
                boolean sireMissing = known.isEmpty() && !animal.sireKind.equals("none");
                if (animal.damId != null) {
                    known.add(animal.damId);
                }
                parents.addAll(known);
                if (known.isEmpty()) {
                    founder(animal);
                } else {
                    ofParents(animal, sireMissing || animal.damId == null);
                }
            }
            parents.removeAll(seen);
            return parents;
        }

        private void founder(Animal animal) {
            var claim = LocalityClaim.of(animal.localityClaim(), String.valueOf(own.locality()));
            lines++;
            if (claim.isOfAnother(own) || !claim.certainty().holds()) {
                notEstablished++;
            }
            found(claim);
        }

        private void notKnown() {
            lines++;
            notEstablished++;
            weakest = Certainty.UNKNOWN;
        }

        private void ofParents(Animal animal, boolean oneMissing) {
            if (oneMissing) {
                notKnown();
            }
            if (animal.localityClaim() != null) {
                found(animal.localityClaim());
            }
        }

        private void found(LocalityClaim claim) {
            var place = String.valueOf(claim.locality()).strip();
            var name = surest.keySet().stream()
                    .filter(place::equalsIgnoreCase)
                    .findFirst()
                    .orElse(place);
            surest.merge(name, claim, (one, other) -> other.certainty().isWeakerThan(one.certainty()) ? one : other);
            weakest = claim.certainty().isWeakerThan(weakest) ? claim.certainty() : weakest;
        }

        LocalityView view(Animal animal) {
            var ownName = String.valueOf(own.locality());
            var names = surest.keySet().stream()
                    .sorted((one, other) ->
                            Boolean.compare(other.equalsIgnoreCase(ownName), one.equalsIgnoreCase(ownName)))
                    .toList();
            var holding = names.stream()
                    .filter(name -> surest.get(name).certainty().holds())
                    .toList();
            boolean mixed = holding.size() > 1;
            return new LocalityView(
                    animal.number,
                    animal.localityClaim(),
                    names,
                    mixed,
                    weakest,
                    lines,
                    notEstablished,
                    mixed ? "mixed: " + String.join("/", holding) : pure(ownName, holding));
        }

        private String pure(String ownName, List<String> holding) {
            if (notEstablished > 0) {
                return "%s: not established (%d of %d)".formatted(ownName, notEstablished, lines);
            }
            return "%s: %s".formatted(holding.isEmpty() ? ownName : holding.get(0), weakest.word());
        }
    }
}
