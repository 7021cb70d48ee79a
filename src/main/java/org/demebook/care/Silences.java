package org.demebook.care;

import static org.demebook.problem.ProblemType.NO_SUCH_SILENCE;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.care.CareFacts.CareSilenceEnded;
import org.demebook.journal.Journal;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;
import org.demebook.registry.Animals;

/** The silences that hold in the asker's collections, whether or not a task lies under them. */
@ApplicationScoped
public class Silences {
    @Inject
    Journal journal;

    @Inject
    Animals animals;

    @Inject
    TaskGathering gathering;

    /** What the asker does not want to hear of. */
    @Transactional
    public List<SilenceView> all(Standing by) {
        var silences = gathering.silences(by);
        var numbers = animals.numbers(
                by.populationId(),
                silences.stream()
                        .map(silence -> silence.animalId)
                        .filter(Objects::nonNull)
                        .collect(Collectors.toSet()));
        return silences.stream().map(silence -> silence.view(numbers)).toList();
    }

    /** Ends a silence; refuses with NO_SUCH_SILENCE alike when there is none and when it is another keeper's. */
    @Transactional
    public void end(Standing by, UUID silenceId) {
        journal.open(by.populationId());
        var silence = gathering.silences(by).stream()
                .filter(own -> own.id.equals(silenceId))
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_SILENCE, "There is no silence %s among those of yours.".formatted(silenceId)));
        journal.record(by.populationId(), by.keeperId(), new CareSilenceEnded(silence.id));
    }
}
