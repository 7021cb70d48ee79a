package org.demebook.approach;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.demebook.approach.ApproachFacts.ApproachProposed;
import org.demebook.consent.AgreedGrants;
import org.demebook.journal.Entry;
import org.jspecify.annotations.Nullable;

/** An approach, with what both sides said. */
@Entity
@Table(name = "approach")
@IdClass(Approach.Key.class)
class Approach extends PanacheEntityBase {
    static final int DAYS_OPEN = 30;

    private static final String AGREED = "agreed";
    private static final String REFUSED = "refused";

    record Key(UUID populationId, UUID id) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    UUID collectionId;
    UUID animalId;
    String pseudonym;
    UUID proposedBy;
    LocalDate proposedOn;
    UUID partnerCollectionId;
    UUID partnerId;
    String partnerPseudonym;

    @Nullable
    String words;

    @Nullable
    String answer;

    @Nullable
    LocalDate answeredOn;

    UUID @Nullable [] grantIds;

    @Nullable
    LocalDate withdrawnOn;

    long revision;

    protected Approach() {}

    Approach(Entry entry, ApproachProposed proposed) {
        this.populationId = entry.populationId();
        this.id = proposed.approachId();
        this.collectionId = proposed.collectionId();
        this.animalId = proposed.animalId();
        this.pseudonym = proposed.pseudonym();
        this.proposedBy = entry.actorId();
        this.proposedOn = day(entry);
        this.partnerCollectionId = proposed.partnerCollectionId();
        this.partnerId = proposed.partnerId();
        this.partnerPseudonym = proposed.partnerPseudonym();
        this.words = proposed.words();
        this.revision = entry.seq();
    }

    void agreed(Entry entry, List<UUID> grants) {
        answer = AGREED;
        answeredOn = day(entry);
        grantIds = grants.toArray(UUID[]::new);
        revision = entry.seq();
    }

    void refused(Entry entry) {
        answer = REFUSED;
        answeredOn = day(entry);
        revision = entry.seq();
    }

    void forgetWords() {
        words = null;
    }

    void withdrawn(Entry entry) {
        withdrawnOn = day(entry);
        revision = entry.seq();
    }

    private static LocalDate day(Entry entry) {
        return LocalDate.ofInstant(entry.recordedAt(), ZoneOffset.UTC);
    }

    static @Nullable Approach of(UUID populationId, UUID id) {
        return findById(new Key(populationId, id));
    }

    /**
     * With one of these collections on one of its sides, the latest first.
     *
     * @param side null for either
     * @param after id of the last one seen; null from the first on
     */
    static List<Approach> page(
            UUID populationId, Set<UUID> collectionIds, @Nullable ApproachSide side, @Nullable UUID after, int most) {
        var where = new StringBuilder("populationId = :population and ");
        var parameters = new HashMap<String, Object>();
        parameters.put("population", populationId);
        parameters.put("own", collectionIds);
        if (side == null) {
            where.append("(collectionId in :own or partnerCollectionId in :own)");
        } else {
            where.append(side == ApproachSide.ASKING ? "collectionId in :own" : "partnerCollectionId in :own");
        }
        if (after != null) {
            where.append(" and id < :after");
            parameters.put("after", after);
        }
        return Approach.<Approach>find(where + " order by id desc", parameters)
                .page(0, most)
                .list();
    }

    /** That were proposed after a day, whatever became of them. */
    static List<Approach> proposedAfter(UUID populationId, LocalDate day) {
        return list("populationId = ?1 and proposedOn > ?2", populationId, day);
    }

    /** That one of these collections was asked for on a day or later, and neither answered nor saw taken back. */
    static List<Approach> unanswered(UUID populationId, Set<UUID> collectionIds, LocalDate since) {
        return list(
                "populationId = ?1 and partnerCollectionId in ?2 and proposedOn >= ?3 and answer is null and withdrawnOn is null"
                        + " order by id",
                populationId,
                collectionIds,
                since);
    }

    boolean isAgreed() {
        return AGREED.equals(answer);
    }

    boolean isRefused() {
        return REFUSED.equals(answer);
    }

    /** The last day on which it may be answered. */
    LocalDate openUntil() {
        return proposedOn.plusDays(DAYS_OPEN);
    }

    /** The last day on which the agreement holds; null without one. */
    @Nullable
    LocalDate agreedUntil() {
        return isAgreed() ? Objects.requireNonNull(answeredOn).plusMonths(AgreedGrants.MONTHS_OF_A_PAIR) : null;
    }

    List<UUID> grants() {
        return grantIds == null ? List.of() : List.of(grantIds);
    }

    /** The animal that a side put in. */
    UUID animalOf(ApproachSide side) {
        return side == ApproachSide.ASKING ? animalId : partnerId;
    }

    UUID collectionOf(ApproachSide side) {
        return side == ApproachSide.ASKING ? collectionId : partnerCollectionId;
    }

    /** The side of who acts for these collections; null for who is on neither. */
    @Nullable
    ApproachSide sideOf(Set<UUID> collectionIds) {
        return collectionIds.contains(collectionId)
                ? ApproachSide.ASKING
                : collectionIds.contains(partnerCollectionId) ? ApproachSide.ASKED : null;
    }
}
