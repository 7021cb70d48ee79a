package org.demebook.crossing;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * An offer taken up.
 *
 * @param collection id of the collection of yours that it goes into; nothing when you act for one alone
 */
public record CrossingAcceptance(@Nullable UUID collection) {}
