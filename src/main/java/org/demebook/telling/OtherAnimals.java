package org.demebook.telling;

import static org.demebook.problem.ProblemType.CLAIM_NOT_POSSIBLE;
import static org.demebook.problem.ProblemType.MISTYPED_NUMBER;
import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.consent.Action;
import org.demebook.consent.Consents;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.consent.Purpose;
import org.demebook.federation.Federations;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;
import org.demebook.protocol.AnimalId;
import org.demebook.registry.Animals;
import org.demebook.registry.Custody;
import org.demebook.registry.PedigreeRow;

/** Animals that other nodes registered, as a keeper here names them and sees them. */
@ApplicationScoped
class OtherAnimals {
    private static final char BETWEEN_NODES = '@';

    @Inject
    Federations federations;

    @Inject
    ToldAnimals told;

    @Inject
    Animals animals;

    @Inject
    Consents consents;

    @Inject
    Clock clock;

    Lens lens(Standing by) {
        return consents.lens(by, Purpose.PEDIGREE_VIEW, clock.instant());
    }

    /** Whether somebody may see a field group of an animal that was told here, and by which number. */
    static boolean shows(Lens lens, PedigreeRow row, FieldGroup fieldGroup) {
        return !row.isNameless()
                && lens.may(row.subject(), FieldGroup.IDENTITY, Action.READ)
                && (fieldGroup == FieldGroup.IDENTITY || lens.may(row.subject(), fieldGroup, Action.READ));
    }

    /** The numbers of animals elsewhere that the asker sees, by name between nodes. O(animals told). */
    Map<AnimalId, String> numbers(Standing by) {
        var rows = told.rows(by.populationId());
        var lens = lens(by);
        var numbers = new HashMap<AnimalId, String>();
        for (var row : rows.elsewhere().animals()) {
            rows.name(row.id())
                    .filter(id -> shows(lens, row, FieldGroup.IDENTITY))
                    .ifPresent(id -> numbers.put(id, row.number()));
        }
        return numbers;
    }

    /**
     * The animal of another node that somebody names. Refuses with MISTYPED_NUMBER; with NO_SUCH_ANIMAL alike where there is none and
     * where its number is not shown to the asker; with CLAIM_NOT_POSSIBLE where it has a record on this node, unless that was found to be
     * the same animal.
     *
     * @param record the one of which it is said to be another
     */
    AnimalId require(Standing by, String named, UUID record) {
        var text = named.strip();
        return text.indexOf(BETWEEN_NODES) < 0 ? numbered(by, text, record) : called(by, text, record);
    }

    private AnimalId numbered(Standing by, String text, UUID record) {
        var number = Animals.number(text).toString();
        return numbers(by).entrySet().stream()
                .filter(shown -> shown.getValue().equals(number))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElseGet(() -> ofRecord(by, animals.custody(by, number), record));
    }

    private AnimalId called(Standing by, String text, UUID record) {
        var id = parse(text);
        if (id.node().equals(federations.nodeId())) {
            throw new Refusal(
                    CLAIM_NOT_POSSIBLE,
                    "%s is a name that this node gave: both are animals of this node. Claim it between the two here (POST …/animals/{number}/same-animal-claims)."
                            .formatted(text));
        }
        var here = federations.localId(by.populationId(), id);
        if (here.isPresent()) {
            var other = animals.custody(by.populationId(), here.get());
            if (animals.find(by, other.number()).isEmpty()) {
                throw noSuch(by, text);
            }
            return ofRecord(by, other, record);
        }
        boolean named = told.rows(by.populationId()).name(ToldRows.rowOf(id)).isPresent();
        if (!named
                && !federations.reading(
                        by.populationId(), part -> part.animals().contains(id))) {
            throw noSuch(by, text);
        }
        return id;
    }

    /** @param other one that the asker sees */
    private AnimalId ofRecord(Standing by, Custody other, UUID record) {
        return federations
                .animalId(by.populationId(), other.id())
                .filter(id -> !id.node().equals(federations.nodeId()))
                .filter(id -> animals.recordsOf(by.populationId(), record).contains(other.id()))
                .orElseThrow(() -> new Refusal(
                        CLAIM_NOT_POSSIBLE,
                        "%s has a record on this node, like yours. Claim it between the two here (POST …/animals/{number}/same-animal-claims)."
                                .formatted(other.number())));
    }

    private static AnimalId parse(String text) {
        try {
            return AnimalId.parse(text);
        } catch (IllegalArgumentException e) {
            throw new Refusal(
                    MISTYPED_NUMBER,
                    "%s is no name between nodes: 36 characters, @, and 43 characters of its node's id."
                            .formatted(text),
                    List.of(),
                    e);
        }
    }

    private static Refusal noSuch(Standing by, String text) {
        return new Refusal(
                NO_SUCH_ANIMAL,
                "No animal of %s is called %s between its nodes, as far as this node has heard; have its keeper read it out again, or wait a minute."
                        .formatted(by.populationCode(), text));
    }
}
