package org.demebook.registry;

import java.time.LocalDate;
import java.util.UUID;
import org.demebook.consent.Subject;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.notation.StudbookNumber;
import org.jspecify.annotations.Nullable;

/**
 * What figures are computed from, of one record of the register; never shown as it stands.
 *
 * @param born as it is known, in writing; null when it is not
 * @param bornEarliest null: not known, or open towards the past
 * @param bornLatest null: not known, or open towards the future
 * @param diedEarliest null: not known, or open towards the past
 * @param collectionId where it lives; null while it is in a transfer
 * @param ownerCollectionId whose it is
 * @param sameAsId the record that stands for this one; null when it stands for itself
 * @param twinOfId the littermate whose genome it has; null when it has its own
 * @param parentageSeq the last entry that states its parents, or whether it has a genome of its own
 * @param node code of the node on which it lives; null: on this one
 * @param parentageUnshown its parents were told to be computed with, and are shown to nobody, whoever holds it
 */
public record PedigreeRow(
        UUID id,
        String number,
        Sex sex,
        @Nullable String born,
        @Nullable LocalDate bornEarliest,
        @Nullable LocalDate bornLatest,
        boolean alive,
        @Nullable LocalDate diedEarliest,
        Origin origin,
        @Nullable UUID damId,
        Sire sire,
        @Nullable UUID collectionId,
        @Nullable UUID ownerCollectionId,
        @Nullable UUID sameAsId,
        @Nullable UUID twinOfId,
        long parentageSeq,
        @Nullable String node,
        boolean parentageUnshown) {

    /** A record of this node. */
    public PedigreeRow(
            UUID id,
            String number,
            Sex sex,
            @Nullable String born,
            @Nullable LocalDate bornEarliest,
            @Nullable LocalDate bornLatest,
            boolean alive,
            @Nullable LocalDate diedEarliest,
            Origin origin,
            @Nullable UUID damId,
            Sire sire,
            @Nullable UUID collectionId,
            @Nullable UUID ownerCollectionId,
            @Nullable UUID sameAsId,
            @Nullable UUID twinOfId,
            long parentageSeq) {
        this(
                id,
                number,
                sex,
                born,
                bornEarliest,
                bornLatest,
                alive,
                diedEarliest,
                origin,
                damId,
                sire,
                collectionId,
                ownerCollectionId,
                sameAsId,
                twinOfId,
                parentageSeq,
                null,
                false);
    }

    /** This record as if nobody had named its sire. */
    public PedigreeRow withoutSire() {
        return with(origin, damId, new Sire.Unknown(), sameAsId, twinOfId, parentageSeq, parentageUnshown);
    }

    /** An animal as consent has it: the collections that hold and own it have a say, dead or alive. */
    public Subject subject() {
        return Subject.of(id, collectionId, ownerCollectionId);
    }

    /** Without its parents, its litter and its twin, as far as they were ever stated. */
    public PedigreeRow withoutParentage() {
        return with(origin, null, new Sire.Unknown(), sameAsId, null, 0, false);
    }

    /** This record as if nobody had named its parents; whose twin it is stays. */
    public PedigreeRow withoutParents() {
        return with(origin, null, new Sire.Unknown(), sameAsId, twinOfId, parentageSeq, false);
    }

    /** With a genome of its own. */
    public PedigreeRow withoutTwin() {
        return with(origin, damId, sire, sameAsId, null, parentageSeq, parentageUnshown);
    }

    /** Its number, and nothing else. */
    public PedigreeRow bare() {
        return new PedigreeRow(
                id,
                number,
                Sex.UNKNOWN,
                null,
                null,
                null,
                false,
                null,
                Origin.UNKNOWN,
                null,
                new Sire.Unknown(),
                null,
                null,
                null,
                null,
                0,
                node,
                false);
    }

    /**
     * This record with its gaps filled from another record of the same animal. The parents are those of one record, never
     * one of each; a death on either counts.
     */
    public PedigreeRow filledFrom(PedigreeRow other) {
        var dated = born != null ? this : other;
        var descended = damId != null || !(sire instanceof Sire.Unknown) ? this : other;
        return new PedigreeRow(
                id,
                number,
                sex != Sex.UNKNOWN ? sex : other.sex,
                dated.born,
                dated.bornEarliest,
                dated.bornLatest,
                alive && other.alive,
                alive ? other.diedEarliest : diedEarliest,
                origin != Origin.UNKNOWN ? origin : other.origin,
                descended.damId,
                descended.sire,
                collectionId,
                ownerCollectionId,
                sameAsId,
                twinOfId != null ? twinOfId : other.twinOfId,
                Math.max(parentageSeq, other.parentageSeq),
                node,
                descended.parentageUnshown);
    }

    /** Told of, from another node, to be computed with: its number is drawn, orders it among the others, and names nothing. */
    public boolean isNameless() {
        return node != null && StudbookNumber.isPlaceholder(number);
    }

    /** With the parents that another node told of; the same where it names parents itself. */
    public PedigreeRow descending(Elsewhere.Descent told) {
        if (damId != null || !(sire instanceof Sire.Unknown)) {
            return this;
        }
        return with(
                told.origin() == Origin.UNKNOWN ? origin : told.origin(),
                told.damId(),
                told.sire(),
                sameAsId,
                twinOfId,
                parentageSeq,
                told.unshown());
    }

    /** As a record of its own, that stands for no other. */
    public PedigreeRow alone() {
        return standingFor(null);
    }

    /** @param sameAsId null: for itself */
    public PedigreeRow standingFor(@Nullable UUID sameAsId) {
        return with(origin, damId, sire, sameAsId, twinOfId, parentageSeq, parentageUnshown);
    }

    /** The same animal where it is, with what is stated of its descent. */
    private PedigreeRow with(
            Origin origin,
            @Nullable UUID damId,
            Sire sire,
            @Nullable UUID sameAsId,
            @Nullable UUID twinOfId,
            long parentageSeq,
            boolean parentageUnshown) {
        return new PedigreeRow(
                id,
                number,
                sex,
                born,
                bornEarliest,
                bornLatest,
                alive,
                diedEarliest,
                origin,
                damId,
                sire,
                collectionId,
                ownerCollectionId,
                sameAsId,
                twinOfId,
                parentageSeq,
                node,
                parentageUnshown);
    }
}
