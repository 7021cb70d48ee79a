package org.demebook.planning;

import static org.demebook.problem.ProblemType.ANIMAL_DEAD;
import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;
import static org.demebook.problem.ProblemType.NO_CANDIDATES;
import static org.demebook.problem.ProblemType.ON_HOLD;

import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import org.demebook.ancestry.Snapshot;
import org.demebook.notation.Sex;
import org.demebook.problem.Refusal;

/** The animals that live with the asker, and which of them a partner may be looked for. */
record OwnAnimals(Snapshot snapshot, Set<UUID> collectionIds) {

    Set<Integer> rows() {
        var rows = new HashSet<Integer>();
        for (int row = 0; row < snapshot.size(); row++) {
            if (contains(row)) {
                rows.add(row);
            }
        }
        return rows;
    }

    boolean contains(int row) {
        return snapshot.collection(row) != null && collectionIds.contains(snapshot.collection(row));
    }

    /** Refuses with NOT_YOUR_ANIMAL, ANIMAL_DEAD, ON_HOLD or NO_CANDIDATES. */
    void requirePairable(Candidates candidates, int row) {
        var number = snapshot.number(row);
        if (!contains(row)) {
            throw new Refusal(
                    NOT_YOUR_ANIMAL,
                    "%s is not in a collection of yours; partners are proposed to who holds an animal."
                            .formatted(number));
        }
        if (!snapshot.alive(row)) {
            throw new Refusal(ANIMAL_DEAD, "%s is dead.".formatted(number));
        }
        if (snapshot.sex(row) == Sex.UNKNOWN) {
            throw new Refusal(
                    NO_CANDIDATES,
                    "The sex of %s is not known; have it determined and state it first.".formatted(number));
        }
        var held = candidates.known().held().get(row);
        if (held != null) {
            throw new Refusal(
                    ON_HOLD,
                    switch (held.basis()) {
                        case NO_SIRE ->
                            "%s is on hold: it has no sire, so it carries nothing that its dam lacks. Ask for partners for its dam; or ask a coordinator to lift the hold of this one."
                                    .formatted(number);
                        case LOCALITY -> "%s is %s.".formatted(number, held.words());
                        case STATED ->
                            "%s is %s. Lift the hold, or ask a coordinator to, before you plan with it."
                                    .formatted(number, held.words());
                    });
        }
        candidates.objection(row).ifPresent(objection -> {
            throw switch (objection.hindrance()) {
                case ON_HOLD, TEST -> new Refusal(ON_HOLD, "%s is %s.".formatted(number, objection.words()));
                case RESTS ->
                    new Refusal(
                            NO_CANDIDATES, "%s: %s. Ask for that day (pairOn).".formatted(number, objection.words()));
                case TOO_YOUNG -> new Refusal(NO_CANDIDATES, "%s: %s.".formatted(number, objection.words()));
            };
        });
    }
}
