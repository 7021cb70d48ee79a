package org.demebook.registry;

import java.time.LocalDate;
import java.util.UUID;
import org.demebook.consent.Subject;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
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
        long parentageSeq) {

    /** This record as if nobody had named its sire. */
    public PedigreeRow withoutSire() {
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
                new Sire.Unknown(),
                collectionId,
                ownerCollectionId,
                sameAsId,
                twinOfId,
                parentageSeq);
    }

    /** An animal as consent has it: the collections that hold and own it have a say, dead or alive. */
    public Subject subject() {
        return Subject.of(id, collectionId, ownerCollectionId);
    }

    /** Without its parents, its litter and its twin, as far as they were ever stated. */
    public PedigreeRow withoutParentage() {
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
                null,
                new Sire.Unknown(),
                collectionId,
                ownerCollectionId,
                sameAsId,
                null,
                0);
    }

    /** With a genome of its own. */
    public PedigreeRow withoutTwin() {
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
                null,
                parentageSeq);
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
                0);
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
                Math.max(parentageSeq, other.parentageSeq));
    }
}
