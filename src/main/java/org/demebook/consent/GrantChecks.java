package org.demebook.consent;

import static org.demebook.problem.ProblemType.ANIMAL_NOT_IN_COLLECTION;
import static org.demebook.problem.ProblemType.GRANT_PERIOD_NOT_POSSIBLE;
import static org.demebook.problem.ProblemType.GRANT_TO_NOBODY;
import static org.demebook.problem.ProblemType.NO_SUCH_KEEPER;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.consent.GrantFacts.GrantGiven;
import org.demebook.consent.NewGrant.StatedRecipient;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.Words;
import org.demebook.problem.Finding;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.jspecify.annotations.Nullable;

/** Turns a grant as it was sent into one that can be given, or says everything that speaks against it. */
@ApplicationScoped
class GrantChecks {
    private record Fault(ProblemType type, Finding finding) {}

    @Inject
    Keepers keepers;

    @Inject
    AnimalNumbers animals;

    @Inject
    Clock clock;

    /** The present moment as the journal has it. */
    Instant now() {
        return Instant.now(clock).truncatedTo(ChronoUnit.MILLIS);
    }

    GrantGiven checked(Standing by, NewGrant sent) {
        var collectionId = keepers.collection(by, sent.collection()).id();
        var faults = new ArrayList<Fault>();
        var recipient = recipient(by, collectionId, sent.recipient(), faults);
        var animalIds = sent.animals() == null ? null : animalIds(by, collectionId, sent.animals(), faults);
        var now = now();
        var from = sent.from() == null || sent.from().isBefore(now)
                ? now
                : sent.from().truncatedTo(ChronoUnit.MILLIS);
        var until = until(from, sent.until(), now, faults);
        if (recipient == null || !faults.isEmpty()) {
            throw refusal(faults);
        }
        return new GrantGiven(
                Journal.newId(),
                collectionId,
                recipient,
                animalIds,
                sent.fieldGroups().stream().distinct().sorted().toList(),
                sent.purposes().stream().distinct().sorted().toList(),
                sent.actions().stream().distinct().sorted().toList(),
                from,
                until,
                Words.orNull(sent.conditions()),
                Notice.VERSION,
                null,
                null);
    }

    private @Nullable Recipient recipient(Standing by, UUID collectionId, StatedRecipient sent, List<Fault> faults) {
        var named = sent.name() != null;
        var coded = sent.node() != null;
        return switch (sent.kind()) {
            case KEEPER ->
                coded || sent.name() == null
                        ? nobody(
                                faults, "name", sent.name(), "Say which keeper: write their sign-in name, and no node.")
                        : keeper(by, collectionId, sent.name(), faults);
            case NODE ->
                named || sent.node() == null
                        ? nobody(faults, "node", sent.node(), "Say which node: write its code, and no name.")
                        : Recipient.node(sent.node());
            case MEMBERS -> named || coded ? ofAll(faults, sent) : Recipient.MEMBERS;
            case COORDINATORS -> named || coded ? ofAll(faults, sent) : Recipient.COORDINATORS;
            case PUBLIC -> named || coded ? ofAll(faults, sent) : Recipient.PUBLIC;
        };
    }

    private @Nullable Recipient keeper(Standing by, UUID collectionId, String name, List<Fault> faults) {
        UUID keeperId;
        try {
            keeperId = keepers.member(by, name).keeperId();
        } catch (Refusal unknown) {
            faults.add(new Fault(NO_SUCH_KEEPER, Finding.error("recipient.name", name, unknown.detail())));
            return null;
        }
        if (keepers.actsFor(by.populationId(), keeperId, collectionId)) {
            return nobody(
                    faults,
                    "name",
                    name,
                    "%s acts for this collection and sees all of it; name somebody else.".formatted(name));
        }
        return Recipient.keeper(keeperId);
    }

    private static @Nullable Recipient ofAll(List<Fault> faults, StatedRecipient sent) {
        return nobody(
                faults,
                sent.name() != null ? "name" : "node",
                sent.name() != null ? sent.name() : sent.node(),
                "A grant to %s names nobody among them: leave it away, or write the kind keeper or node."
                        .formatted(sent.kind().word()));
    }

    private static @Nullable Recipient nobody(
            List<Fault> faults, String field, @Nullable String value, String message) {
        faults.add(new Fault(GRANT_TO_NOBODY, Finding.error("recipient." + field, value, message)));
        return null;
    }

    private List<UUID> animalIds(Standing by, UUID collectionId, List<String> numbers, List<Fault> faults) {
        var known = animals.byNumber(by.populationId(), collectionId, numbers);
        for (int i = 0; i < numbers.size(); i++) {
            var number = numbers.get(i);
            if (!known.containsKey(number)) {
                // the same words for one that does not exist and one that is somebody else's
                faults.add(new Fault(
                        ANIMAL_NOT_IN_COLLECTION,
                        Finding.error(
                                "animals[%d]".formatted(i),
                                number,
                                "%s is no animal that the collection holds or owns; only its own can be shared."
                                        .formatted(number))));
            }
        }
        return known.values().stream().distinct().sorted().toList();
    }

    private static Instant until(Instant from, @Nullable Instant sent, Instant now, List<Fault> faults) {
        var latest = Notice.latestEnd(now);
        if (sent == null) {
            if (!from.isBefore(latest)) {
                faults.add(new Fault(
                        GRANT_PERIOD_NOT_POSSIBLE,
                        Finding.error(
                                "from",
                                from,
                                "It would begin on %s; a grant ends by %s, 24 months ahead. Let it begin earlier."
                                        .formatted(from, latest))));
            }
            return latest;
        }
        var until = sent.truncatedTo(ChronoUnit.MILLIS);
        if (!from.isBefore(until)) {
            faults.add(new Fault(
                    GRANT_PERIOD_NOT_POSSIBLE,
                    Finding.error(
                            "until",
                            sent,
                            "It would end on %s and begin on %s: it has to end after it begins. Correct one of the two."
                                    .formatted(until, from))));
        } else if (until.isAfter(latest)) {
            faults.add(new Fault(
                    GRANT_PERIOD_NOT_POSSIBLE,
                    Finding.error(
                            "until",
                            sent,
                            "It would end on %s; a grant ends by %s, 24 months ahead, and can be renewed then."
                                    .formatted(until, latest))));
        }
        return until;
    }

    private static Refusal refusal(List<Fault> faults) {
        return new Refusal(
                faults.get(0).type(),
                faults.stream().map(fault -> fault.finding().message()).collect(Collectors.joining(" ")),
                faults.stream().map(Fault::finding).toList());
    }
}
