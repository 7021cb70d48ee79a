package org.demebook.consent;

import java.time.Instant;
import java.util.Map;
import java.util.UUID;
import org.demebook.keeper.Role;

/**
 * The decision as a condition of a query, for lists and counts: true for exactly those rows of which {@link Consents#decide}
 * allows it.
 *
 * <p>The columns and attributes that are handed in are names from the code, never anything that was sent. Parameters are named
 * {@code consent…}, so that they get along with the query's own.
 */
public final class ListCondition {
    private final Map<String, Object> parameters;

    ListCondition(Audience audience, Purpose purpose, FieldGroup fieldGroup, Action action, Instant at) {
        var nobody = new UUID(0, 0);
        parameters = Map.of(
                "consentPopulation",
                audience.populationId(),
                "consentOwn",
                audience.ownCollections().toArray(UUID[]::new),
                "consentKeeper",
                audience.keeperId() == null ? nobody : audience.keeperId(),
                "consentMember",
                audience.role() != null,
                "consentCoordinator",
                audience.role() == Role.COORDINATOR,
                "consentNode",
                audience.node() == null ? "" : audience.node(),
                "consentPurpose",
                purpose.word(),
                "consentFieldGroup",
                fieldGroup.word(),
                "consentAction",
                action.word(),
                "consentAt",
                at);
    }

    /** What the condition wants beside the query's own parameters. */
    public Map<String, Object> parameters() {
        return parameters;
    }

    /** In SQL: columns of the collections that hold and own the animal, either of which may be null, and of its id. */
    public String sql(String holder, String owner, String animal) {
        return """
                (coalesce(%1$s = any (:consentOwn), false) or coalesce(%2$s = any (:consentOwn), false)
                 or (coalesce(%1$s, %2$s) is not null
                     and (%1$s is null or %3$s) and (%2$s is null or %4$s)))""".formatted(holder, owner, sqlGranted(holder, animal), sqlGranted(owner, animal));
    }

    /** In SQL: columns of the collection that wrote the record, and of the animal that it is about. */
    public String sql(String writer, String animal) {
        return "(coalesce(%1$s = any (:consentOwn), false) or %2$s)".formatted(writer, sqlGranted(writer, animal));
    }

    /** The same as {@link #sql(String, String, String)} over entities; attributes with the entity's alias before them. */
    public String jpql(String holder, String owner, String animal) {
        return """
                (coalesce(array_contains(:consentOwn, %1$s), false) or coalesce(array_contains(:consentOwn, %2$s), false)
                 or (coalesce(%1$s, %2$s) is not null
                     and (%1$s is null or %3$s) and (%2$s is null or %4$s)))""".formatted(holder, owner, jpqlGranted(holder, animal), jpqlGranted(owner, animal));
    }

    /** The same as {@link #sql(String, String)} over entities. */
    public String jpql(String writer, String animal) {
        return "(coalesce(array_contains(:consentOwn, %1$s), false) or %2$s)"
                .formatted(writer, jpqlGranted(writer, animal));
    }

    private static String sqlGranted(String party, String animal) {
        return """
                exists (select 1 from demebook.consent_grant g
                    where g.population_id = :consentPopulation and g.collection_id = %s
                    and (g.recipient = 'public'
                        or g.recipient = 'members' and :consentMember
                        or g.recipient = 'coordinators' and :consentCoordinator
                        or g.recipient = 'keeper' and g.recipient_keeper = :consentKeeper
                        or g.recipient = 'node' and g.recipient_node = :consentNode)
                    and :consentPurpose = any (g.purposes) and :consentFieldGroup = any (g.field_groups)
                    and :consentAction = any (g.actions)
                    and (g.animal_ids is null or %s = any (g.animal_ids))
                    and g.from_at <= :consentAt and :consentAt < g.until_at
                    and (g.withdrawn_at is null or :consentAt < g.withdrawn_at)
                    and (g.superseded_at is null or :consentAt < g.superseded_at))""".formatted(party, animal);
    }

    private static String jpqlGranted(String party, String animal) {
        return """
                exists (select 1 from GrantRow g
                    where g.populationId = :consentPopulation and g.collectionId = %s
                    and (g.recipient = 'public'
                        or g.recipient = 'members' and :consentMember = true
                        or g.recipient = 'coordinators' and :consentCoordinator = true
                        or g.recipient = 'keeper' and g.recipientKeeper = :consentKeeper
                        or g.recipient = 'node' and g.recipientNode = :consentNode)
                    and array_contains(g.purposes, :consentPurpose) and array_contains(g.fieldGroups, :consentFieldGroup)
                    and array_contains(g.actions, :consentAction)
                    and (g.animalIds is null or array_contains(g.animalIds, %s))
                    and g.fromAt <= :consentAt and :consentAt < g.untilAt
                    and (g.withdrawnAt is null or :consentAt < g.withdrawnAt)
                    and (g.supersededAt is null or :consentAt < g.supersededAt))""".formatted(party, animal);
    }
}
