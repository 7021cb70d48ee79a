package org.demebook.registry;

import java.util.UUID;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.jspecify.annotations.Nullable;

/**
 * Where an animal is and whose it is, for the rooms that act on it; never shown as it stands.
 *
 * @param collectionId where it lives; null while it is in a transfer, or on its way to another node
 * @param ownerCollectionId whose it is
 * @param transferId the transfer that it is in; null while it is in a collection
 * @param crossingId the crossing by which it is on its way to another node; null while it is not
 * @param disputeId the open dispute over where it is; null while there is none
 * @param merged another number stands for it
 */
public record Custody(
        UUID id,
        String number,
        Sex sex,
        @Nullable RoughDate born,
        @Nullable RoughDate died,
        @Nullable UUID collectionId,
        @Nullable UUID ownerCollectionId,
        @Nullable UUID transferId,
        @Nullable UUID crossingId,
        @Nullable UUID disputeId,
        boolean merged,
        long revision) {
    static Custody of(Animal animal) {
        return new Custody(
                animal.id,
                animal.number,
                animal.sex,
                animal.born,
                animal.died,
                animal.collectionId,
                animal.ownerCollectionId,
                animal.transferId,
                animal.crossingId,
                animal.disputeId,
                animal.sameAsId != null,
                animal.revision);
    }
}
