package org.demebook.consent;

import static org.demebook.problem.ProblemType.GRANT_ENDED;
import static org.demebook.problem.ProblemType.NO_SUCH_GRANT;
import static org.demebook.problem.ProblemType.NO_SUCH_KEEPER;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.demebook.consent.GrantFacts.GrantGiven;
import org.demebook.consent.GrantFacts.GrantSuperseded;
import org.demebook.consent.GrantFacts.GrantWithdrawn;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;
import org.demebook.rest.Page;
import org.jspecify.annotations.Nullable;

/** Giving grants for one's collections, looking at them, renewing them and taking them back. */
@ApplicationScoped
public class Grants {
    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    GrantChecks checks;

    @Inject
    GrantViews views;

    /**
     * Grants of the collections that the asker acts for, the latest first.
     *
     * @param state only those that are this now; null for all
     * @param endWithinDays only live ones that end within so many days, which are to be renewed; null for all
     */
    @Transactional
    public Page<GrantView> page(
            Standing by,
            @Nullable GrantState state,
            @Nullable Integer endWithinDays,
            @Nullable String after,
            int limit) {
        var now = checks.now();
        var last = after == null ? null : Page.id(after);
        var read = own(by).filter(row -> state == null || row.grant().state(now) == state)
                .filter(row -> endWithinDays == null || ends(row, now, endWithinDays))
                .sorted(Comparator.comparing((GrantRow row) -> row.id.toString())
                        .reversed())
                .filter(row -> last == null || row.id.toString().compareTo(last.toString()) < 0)
                .limit(limit + 1L)
                .toList();
        return Page.of(views.of(by, read, now), limit, view -> view.id().toString());
    }

    /** Live grants of the asker's collections that end within so many days. */
    @Transactional
    public List<GrantView> endingWithin(Standing by, int days) {
        var now = checks.now();
        return views.of(by, own(by).filter(row -> ends(row, now, days)).toList(), now);
    }

    private Stream<GrantRow> own(Standing by) {
        return GrantRow.ofCollections(by.populationId(), keepers.collectionIds(by)).stream();
    }

    private static boolean ends(GrantRow row, Instant now, int withinDays) {
        return row.grant().state(now) == GrantState.LIVE && !row.untilAt.isAfter(now.plus(Duration.ofDays(withinDays)));
    }

    /** One grant of a collection that the asker acts for; refuses with NO_SUCH_GRANT alike when there is none. */
    @Transactional
    public GrantView get(Standing by, UUID id) {
        return views.of(by, List.of(own(by, id)), checks.now()).get(0);
    }

    /** Gives a grant; collects everything that speaks against it. */
    @Transactional
    public GrantView give(Standing by, NewGrant grant) {
        journal.open(by.populationId());
        var given = checks.checked(by, grant);
        journal.record(by.populationId(), by.keeperId(), given);
        return get(by, given.grantId());
    }

    /** Takes a grant back, from now on. One that was withdrawn stays so: the same answer twice. */
    @Transactional
    public GrantView withdraw(Standing by, UUID id) {
        journal.open(by.populationId());
        var row = own(by, id);
        var state = row.grant().state(checks.now());
        if (state == GrantState.EXPIRED || state == GrantState.SUPERSEDED) {
            throw new Refusal(
                    GRANT_ENDED,
                    "The grant is %s already and shows nothing any more; there is nothing to withdraw."
                            .formatted(state.word()));
        }
        if (state != GrantState.WITHDRAWN) {
            journal.record(by.populationId(), by.keeperId(), new GrantWithdrawn(id));
        }
        return get(by, id);
    }

    /**
     * Gives the same again from now on, for as long as a grant may last, in place of the earlier one; also when that has run
     * out. The consent is to the present notice.
     */
    @Transactional
    public GrantView renew(Standing by, UUID id) {
        journal.open(by.populationId());
        var row = own(by, id);
        var now = checks.now();
        var state = row.grant().state(now);
        if (row.withdrawnAt != null || row.supersededAt != null) {
            throw new Refusal(
                    GRANT_ENDED,
                    "The grant is %s; give a new one if you want to share this again."
                            .formatted(row.withdrawnAt != null ? "withdrawn" : "replaced by another"));
        }
        if (state == GrantState.NOT_YET) {
            throw new Refusal(GRANT_ENDED, "The grant begins on %s; renew it once it holds.".formatted(row.fromAt));
        }
        if (row.recipientKeeper != null && !keepers.belongs(by.populationId(), row.recipientKeeper)) {
            throw new Refusal(
                    NO_SUCH_KEEPER,
                    "The keeper to whom it was given belongs to %s no longer.".formatted(by.populationCode()));
        }
        journal.record(by.populationId(), by.keeperId(), new GrantSuperseded(id));
        var grant = row.grant();
        var renewed = new GrantGiven(
                Journal.newId(),
                row.collectionId,
                grant.recipient(),
                row.animalIds == null ? null : Arrays.asList(row.animalIds),
                grant.fieldGroups().stream().sorted().toList(),
                grant.purposes().stream().sorted().toList(),
                grant.actions().stream().sorted().toList(),
                now,
                Notice.latestEnd(now),
                row.conditions,
                Notice.VERSION,
                row.choice == null ? null : ReadyChoice.parse(row.choice),
                id);
        journal.record(by.populationId(), by.keeperId(), renewed);
        return get(by, renewed.grantId());
    }

    GrantRow own(Standing by, UUID id) {
        var own = keepers.collectionIds(by); // asked for in either case: what is hidden costs what is absent does
        var row = GrantRow.of(by.populationId(), id);
        if (row == null || !own.contains(row.collectionId)) {
            throw new Refusal(NO_SUCH_GRANT, "No collection of yours has given a grant with the id %s.".formatted(id));
        }
        return row;
    }
}
