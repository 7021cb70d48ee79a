package org.demebook.keeper;

import org.demebook.rest.ShownTo;
import java.util.UUID;

/** A collection that the asker acts for. */
@ShownTo(ShownTo.Whom.MEMBERS)
public record CollectionView(UUID id, String label) {}
