package org.demebook.programme;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_SUCH_DRAFT;
import static org.demebook.problem.ProblemType.TOO_MANY_DRAFTS;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;

/**
 * Plans that coordinators have computed, to look at, to compare, and to issue or forget. They are in the memory of this server
 * alone and gone two hours after somebody last looked, when it is stopped, and the oldest of a coordinator's when there are more than
 * ten.
 */
@ApplicationScoped
public class Drafts {
    static final Duration KEPT = Duration.ofHours(2);

    /** Of one coordinator. Each holds the kinships of its candidates: 6 MB where there are 300 of each sex. */
    private static final int MOST = 10;

    private static final int MOST_AT_WORK = 4;

    @Inject
    Stages stages;

    @Inject
    SeasonPlans plans;

    @Inject
    Solving solving;

    @Inject
    DraftViews views;

    @Inject
    Clock clock;

    private final Cache<UUID, Draft> drafts =
            Caffeine.newBuilder().expireAfterAccess(KEPT).build();

    /**
     * Begins to compute; the work goes on behind the answer. Refuses with NOT_ALLOWED all but coordinators, with NO_CANDIDATES,
     * NO_SUCH_ANIMAL, MISTYPED_NUMBER, NO_SUCH_PLAN, and with TOO_MANY_DRAFTS while four are at work.
     */
    public DraftView start(Standing by, NewDraft asked) {
        requireCoordinator(by);
        if (asked.litters() != null && asked.littersAtMost() != null) {
            throw new Refusal(BAD_PARAMETER, "Say litters or littersAtMost, not both.");
        }
        if (asked.youngInAll() != null
                && (asked.litters() == null
                        || asked.youngInAll() < asked.litters()
                        || asked.youngInAll() > (long) asked.litters() * asked.young())) {
            throw new Refusal(
                    BAD_PARAMETER,
                    "youngInAll is spread over litters: say litters too, at most one for each young, and at least one for each %d young."
                            .formatted(asked.young()));
        }
        long atWork = drafts.asMap().values().stream()
                .filter(draft -> !draft.state().isOver())
                .count();
        if (atWork >= MOST_AT_WORK) {
            throw new Refusal(
                    TOO_MANY_DRAFTS,
                    "%d plans are being computed on this server; wait for one, or stop one of yours."
                            .formatted(atWork));
        }
        var settled = asked.follows() == null ? Settled.NOTHING : plans.settled(by, asked.follows());
        var draft = new Draft(Journal.newId(), by, clock.instant(), asked, stages.of(by, asked, settled));
        forgetOldest(by);
        drafts.put(draft.id, draft);
        solving.begin(draft);
        return views.of(by, draft);
    }

    /** So that there is room for one more. */
    private void forgetOldest(Standing by) {
        var own = drafts.asMap().values().stream()
                .filter(draft -> draft.isOf(by))
                .sorted(Comparator.comparing((Draft draft) -> draft.id))
                .toList();
        own.stream()
                .filter(draft -> draft.state().isOver())
                .limit(Math.max(0, own.size() + 1 - MOST))
                .forEach(draft -> drafts.invalidate(draft.id));
    }

    public DraftView get(Standing by, UUID id) {
        return views.of(by, require(by, id));
    }

    /** What was asked of it, to ask something similar. */
    public NewDraft asked(Standing by, UUID id) {
        return require(by, id).asked;
    }

    /** The asker's own, the latest first. */
    public List<DraftView> all(Standing by) {
        requireCoordinator(by);
        return drafts.asMap().values().stream()
                .filter(draft -> draft.isOf(by))
                .sorted(Comparator.comparing((Draft draft) -> draft.id).reversed())
                .map(draft -> views.of(by, draft))
                .toList();
    }

    /** Ends the work soon; the best plan so far is kept. Nothing happens to one that is over. */
    public DraftView stop(Standing by, UUID id) {
        var draft = require(by, id);
        draft.stop();
        return views.of(by, draft);
    }

    Draft require(Standing by, UUID id) {
        requireCoordinator(by);
        var draft = drafts.getIfPresent(id);
        if (draft == null || !draft.isOf(by)) {
            throw new Refusal(
                    NO_SUCH_DRAFT,
                    "You have no draft with the id %s. Drafts are kept for two hours, and not when the server is started again; have it computed again."
                            .formatted(id));
        }
        return draft;
    }

    /** Refuses with NOT_ALLOWED all others. */
    public static void requireCoordinator(Standing by) {
        if (!by.isCoordinator()) {
            throw new Refusal(
                    NOT_ALLOWED,
                    "Plans of the whole population are for its coordinators; look at what it recommends for your animals.");
        }
    }
}
