package org.demebook.consent;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.demebook.consent.GrantFacts.GrantGiven;
import org.demebook.journal.Entry;
import org.jspecify.annotations.Nullable;

/** A grant, with what came of it. */
@Entity
@Table(name = "consent_grant")
@IdClass(GrantRow.Key.class)
class GrantRow extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    UUID collectionId;
    UUID givenBy;
    Instant givenAt;
    String recipient;

    @Nullable
    UUID recipientKeeper;

    @Nullable
    String recipientNode;

    UUID @Nullable [] animalIds;

    String[] fieldGroups;
    String[] purposes;
    String[] actions;
    Instant fromAt;
    Instant untilAt;

    @Nullable
    String conditions;

    String noticeVersion;

    @Nullable
    String choice;

    @Nullable
    UUID renews;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    UUID withdrawnBy;

    @Nullable
    Instant supersededAt;

    long revision;

    protected GrantRow() {}

    GrantRow(Entry entry, GrantGiven given) {
        this.populationId = entry.populationId();
        this.id = given.grantId();
        this.collectionId = given.collectionId();
        this.givenBy = entry.actorId();
        this.givenAt = entry.recordedAt();
        this.recipient = given.recipient().kind().word();
        this.recipientKeeper = given.recipient().keeperId();
        this.recipientNode = given.recipient().node();
        this.animalIds = given.animalIds() == null ? null : given.animalIds().toArray(UUID[]::new);
        this.fieldGroups = words(given.fieldGroups());
        this.purposes = words(given.purposes());
        this.actions = words(given.actions());
        this.fromAt = given.from();
        this.untilAt = given.until();
        this.conditions = given.conditions();
        this.noticeVersion = given.noticeVersion();
        this.choice = given.choice() == null ? null : given.choice().word();
        this.renews = given.renews();
        this.revision = entry.seq();
    }

    static GrantRow of(UUID populationId, UUID id) {
        return findById(new Key(populationId, id));
    }

    static List<GrantRow> ofPopulation(UUID populationId) {
        return list("populationId = ?1 order by id", populationId);
    }

    static List<GrantRow> ofCollections(UUID populationId, Collection<UUID> collectionIds) {
        return list("populationId = ?1 and collectionId in ?2 order by id", populationId, collectionIds);
    }

    static List<GrantRow> withIds(UUID populationId, Collection<UUID> ids) {
        return list("populationId = ?1 and id in ?2 order by id", populationId, ids);
    }

    /** The grant that was given in place of one; null while there is none. */
    static @Nullable GrantRow renewalOf(GrantRow row) {
        return row.supersededAt == null
                ? null
                : find("populationId = ?1 and renews = ?2", row.populationId, row.id)
                        .firstResult();
    }

    Grant grant() {
        return new Grant(
                id,
                collectionId,
                givenBy,
                new Recipient(Recipient.Kind.parse(recipient), recipientKeeper, recipientNode),
                animalIds == null ? Scope.WHOLE_COLLECTION : Scope.animals(Set.of(animalIds)),
                read(fieldGroups, FieldGroup::parse),
                read(purposes, Purpose::parse),
                read(actions, Action::parse),
                fromAt,
                untilAt,
                conditions,
                noticeVersion,
                withdrawnAt,
                supersededAt);
    }

    private static String[] words(List<? extends Enum<?>> values) {
        return values.stream().map(Wording::word).toArray(String[]::new);
    }

    private static <E> Set<E> read(String[] words, Function<String, E> parse) {
        return Arrays.stream(words).map(parse).collect(Collectors.toSet());
    }
}
