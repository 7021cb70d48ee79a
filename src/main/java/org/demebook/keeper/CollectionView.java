package org.demebook.keeper;

import java.util.UUID;
import org.demebook.rest.ShownTo;

/** A collection that the asker acts for. */
@ShownTo(ShownTo.Whom.MEMBERS)
public record CollectionView(UUID id, String label) {}
