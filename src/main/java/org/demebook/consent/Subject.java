package org.demebook.consent;

import java.util.Set;
import java.util.UUID;

/**
 * What a decision is about: an animal, or a record about one.
 *
 * @param parties the collections that have a say: of an animal the one that holds it and the one that owns it, of a record
 *     the one that wrote it; with none, nobody may see it
 */
public record Subject(UUID animalId, Set<UUID> parties) {}
