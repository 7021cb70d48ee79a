package org.demebook.consent;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.demebook.keeper.Standing;

/**
 * Whether somebody may see, or do, something: the one place where it is decided. Denied unless granted.
 *
 * <p>The same decision three times: {@link #decide} is the rule; a {@link Lens} makes it for thousands of records of one
 * request; a {@link ListCondition} has the database make it. A test holds the three equal.
 */
@ApplicationScoped
public class Consents {
    private static final Set<UUID> NONE = Set.of();

    @Inject
    Snapshots snapshots;

    @Inject
    Choices choices;

    @Inject
    Disclosures disclosures;

    @Inject
    @Any
    Instance<GrantsElsewhere> elsewhere;

    /**
     * The rule. Whoever acts for one of the parties may; everybody else may if every party has a live grant that covers
     * just this, by itself. A subject without parties is nobody's to show.
     *
     * @param grants of the population, or at least all of the parties
     */
    public static Decision decide(
            Audience audience,
            Purpose purpose,
            Subject subject,
            FieldGroup fieldGroup,
            Action action,
            Instant at,
            Collection<Grant> grants) {
        if (Covering.actsForOneOf(audience, subject.parties())) {
            return Decision.OWN;
        }
        var grantIds = new TreeSet<UUID>();
        for (var party : subject.parties()) {
            var first = grants.stream()
                    .filter(grant -> grant.collectionId().equals(party))
                    .filter(grant -> Covering.speaksTo(grant, audience, purpose, at))
                    .filter(grant -> Covering.includes(grant, subject.animalId(), fieldGroup, action))
                    .map(Grant::id)
                    .min(UUID::compareTo);
            if (first.isEmpty()) {
                return Decision.DENIED;
            }
            grantIds.add(first.get());
        }
        return grantIds.isEmpty() ? Decision.DENIED : new Decision(true, grantIds);
    }

    /**
     * What the asker may see for a purpose. Costs no query while nothing happens in the population; sees every grant and
     * withdrawal that was recorded when the standing was read.
     */
    public Lens lens(Standing by, Purpose purpose, Instant at) {
        var snapshot = snapshots.at(by.populationId(), by.head());
        return new Lens(audience(by, snapshot), purpose, at, snapshot.grants(), elsewhere(by.populationId()));
    }

    /** What somebody else may see: the public, or a node. One query. */
    public Lens lens(Audience audience, Purpose purpose, Instant at) {
        var snapshot = snapshots.now(audience.populationId());
        return new Lens(audience, purpose, at, snapshot.grants(), elsewhere(audience.populationId()));
    }

    private List<Grant> elsewhere(UUID populationId) {
        return elsewhere.stream()
                .flatMap(told -> told.grantsOf(populationId).stream())
                .toList();
    }

    /** The decision as a condition of a query, where a list is read or counted. */
    public static ListCondition condition(
            Audience audience, Purpose purpose, FieldGroup fieldGroup, Action action, Instant at) {
        return new ListCondition(audience, purpose, fieldGroup, action, at);
    }

    /**
     * Writes down what a lens let through since this was called last, for those whose grants it rests on. Call it before the
     * answer goes out: what cannot be written down is not told.
     */
    public void disclosed(Lens lens) {
        disclosures.record(lens);
    }

    /** Shares a collection of the asker's by a ready choice: a collection that nobody did this for shares nothing. */
    public SharingView start(Standing by, UUID collectionId, ReadyChoice choice) {
        return choices.choose(by, collectionId, choice);
    }

    /** The asker as an audience. */
    public Audience audience(Standing by) {
        return audience(by, snapshots.at(by.populationId(), by.head()));
    }

    private static Audience audience(Standing by, Snapshots.Snapshot snapshot) {
        return new Audience(
                by.populationId(),
                by.keeperId(),
                by.role(),
                snapshot.collectionsOf().getOrDefault(by.keeperId(), NONE));
    }
}
