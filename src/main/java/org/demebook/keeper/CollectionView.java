package org.demebook.keeper;

import java.util.UUID;

/** A collection that the asker acts for. */
public record CollectionView(UUID id, String label) {}
