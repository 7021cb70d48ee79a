package org.demebook.crossing;

import static org.demebook.problem.ProblemType.ANIMAL_ELSEWHERE;
import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.crossing.CrossingFacts.AdoptedAnimalPlaced;
import org.demebook.crossing.WaitingAnimals.Waiting;
import org.demebook.federation.Federations;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.Origin;
import org.demebook.notation.StudbookNumber;
import org.demebook.problem.Finding;
import org.demebook.problem.Refusal;
import org.demebook.registry.AnimalRegistered;
import org.demebook.registry.Animals;
import org.demebook.registry.Arrivals;
import org.demebook.registry.Sire;
import org.demebook.telling.SingleAnimals;
import org.jspecify.annotations.Nullable;

/**
 * Animals that this node adopted from one that is gone, and who keeps them here: a coordinator says so of each, once its keeper has joined
 * this node and shown who they are. Which node holds them was decided between the nodes; who keeps them is for people.
 */
@ApplicationScoped
public class AdoptedAnimals {
    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Arrivals arrivals;

    @Inject
    Federations federations;

    @Inject
    WaitingAnimals waiting;

    @Inject
    SingleAnimals tellings;

    @Inject
    Records records;

    /** Those that have no keeper here yet, in the order of their names between nodes; for coordinators. */
    @Transactional
    public List<AdoptedAnimalView> waiting(Standing by) {
        Keepers.requireCoordinator(by);
        return waiting.of(by.populationId()).stream().map(waiting::view).toList();
    }

    /**
     * Gives one of them to a member; for coordinators. The record from before comes back to life, else one is made of what was told.
     *
     * @param animal what it is called between nodes
     */
    @Transactional
    public PlacedView place(Standing by, String animal, Placement placement) {
        Keepers.requireCoordinator(by);
        journal.open(by.populationId());
        var found = waiting.of(by.populationId()).stream()
                .filter(one -> one.animal().toString().equals(animal))
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_ANIMAL,
                        "No adopted animal %s of %s waits for a keeper on this node."
                                .formatted(animal, by.populationCode())));
        var to = keepers.member(by, placement.to().strip());
        var number = number(by, found, placement.number());
        var record = Optional.ofNullable(found.record()).or(() -> unnamed(by, number, to.keeperId(), placement.to()));
        var into = record.map(id -> animals.custody(by.populationId(), id).collectionId())
                .filter(home -> keepers.actsFor(by.populationId(), to.keeperId(), home))
                .orElseGet(() -> records.collectionOf(by.populationId(), to.keeperId()));
        var animalId = record.orElseGet(() -> register(by, found, number, to.keeperId(), into));
        federations.arrived(by.populationId(), to.keeperId(), animalId, found.animal());
        tellings.standsHere(by.populationId());
        journal.record(
                by.populationId(),
                by.keeperId(),
                new AdoptedAnimalPlaced(
                        animalId,
                        found.animal().toString(),
                        found.from(),
                        into,
                        animals.custody(by.populationId(), animalId).crossingId()));
        if (record.isPresent()) {
            arrivals.complete(
                    by.populationId(), to.keeperId(), animalId, found.told().sex(), List.of(), into);
        }
        return new PlacedView(animal, number.toString(), to.name());
    }

    // ── its number ───────────────────────────────────────────────────────────────────────────────────────────────────

    /** As it is known, or else as it was typed; both have to be the same where both are there. */
    private StudbookNumber number(Standing by, Waiting found, @Nullable String typed) {
        var given = typed == null || typed.isBlank() ? null : Animals.number(typed.strip());
        var known = found.number();
        if (known == null && given == null) {
            throw wrongNumber(null, "The number of this animal was not told; type it as its keeper shows it.");
        }
        if (known != null && given != null && !known.equals(given)) {
            throw wrongNumber(
                    typed,
                    "This animal is %s, you typed %s: look again which of them its keeper has, or leave the number out."
                            .formatted(known, given));
        }
        var number = known == null ? given : known;
        if (found.record() == null && !waiting.isNumberOf(by.populationId(), found.animal(), number)) {
            throw wrongNumber(
                    typed,
                    "The animal was registered on the node %s, and %s is no number of that node; look again at what its keeper shows."
                            .formatted(
                                    waiting.code(
                                            by.populationId(), found.animal().node()),
                                    number));
        }
        return number;
    }

    private static Refusal wrongNumber(@Nullable String typed, String sentence) {
        return new Refusal(INVALID_VALUES, sentence, List.of(Finding.error("number", typed, sentence)));
    }

    // ── its record ───────────────────────────────────────────────────────────────────────────────────────────────────

    /** A record under this number that was made here by hand, with no name between nodes: that keeper's, or nobody's. */
    private Optional<UUID> unnamed(Standing by, StudbookNumber number, UUID keeper, String name) {
        var record = arrivals.numbered(by.populationId(), number.toString());
        record.ifPresent(id -> {
            var home = animals.custody(by.populationId(), id).collectionId();
            var isTheirs = home != null
                    && (keepers.keepersOf(by.populationId(), home).isEmpty()
                            || keepers.actsFor(by.populationId(), keeper, home));
            if (!isTheirs || federations.animalId(by.populationId(), id).isPresent()) {
                throw new Refusal(
                        ANIMAL_ELSEWHERE,
                        "%s stands in the register already, and not with %s: whoever keeps it there offers it to them (POST …/transfers)."
                                .formatted(number, name));
            }
        });
        return record;
    }

    private UUID register(Standing by, Waiting found, StudbookNumber number, UUID keeper, UUID into) {
        var told = found.told();
        return records.register(
                by.populationId(),
                keeper,
                found.animal(),
                id -> new AnimalRegistered(
                        id,
                        number,
                        told.sex(),
                        told.born(),
                        null,
                        told.founder() ? Origin.WILD_CAUGHT : Origin.UNKNOWN,
                        null,
                        null,
                        new Sire.Unknown(),
                        null,
                        false,
                        into,
                        List.of(),
                        null));
    }
}
