package org.demebook.journal;

import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;

/**
 * A fact whose words are about to be taken out for good.
 *
 * @param said as it was read until now
 * @param left as it is read from now on
 * @param sharedCollections collections that others act for too: what the leaver wrote for them stays with the others
 * @param saidByOthers whether somebody else wrote the very same words in this population
 */
public record Forgotten(
        Entry entry, Fact said, Fact left, Set<UUID> sharedCollections, Predicate<String> saidByOthers) {}
