package org.demebook.keeper;

import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * A collection that the asker acts for.
 *
 * @param region where it is, as coarsely as the association's regions say; absent when it states none
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record CollectionView(
        UUID id, String label, @Nullable String region) {}
