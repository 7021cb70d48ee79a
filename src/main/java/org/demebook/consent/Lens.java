package org.demebook.consent;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What one audience may see for one purpose at one moment: the grants of the population, looked up once for many decisions.
 * Decides as {@link Consents#decide} does, in about a tenth of a microsecond (docs/performance.md), and remembers what it allowed on somebody's grant.
 *
 * <p>Of one request, and of one thread.
 */
public final class Lens {
    /**
     * What all decisions of a lens follow from: lenses of one population and the same basis decide alike.
     *
     * @param grantIds of those that are live and speak to the audience for the purpose
     */
    public record Basis(Set<UUID> ownCollections, Set<UUID> grantIds) {}

    /** On what grant, and how, something was allowed. */
    record Use(UUID collectionId, UUID grantId, Action action) {}

    private final Audience audience;
    private final Purpose purpose;
    private final Instant at;
    private final Map<UUID, List<Grant>> byCollection = new HashMap<>();
    private final Set<UUID> grantsUsed = new HashSet<>();
    private final Set<UUID> grantedElsewhere = new HashSet<>();
    private Map<Use, Map<FieldGroup, Set<UUID>>> untold = new HashMap<>();

    Lens(Audience audience, Purpose purpose, Instant at, Iterable<Grant> inOrderOfIds) {
        this(audience, purpose, at, inOrderOfIds, List.of());
    }

    /** @param elsewhere that other nodes told of; who sees what on these is written down there */
    Lens(Audience audience, Purpose purpose, Instant at, Iterable<Grant> inOrderOfIds, Collection<Grant> elsewhere) {
        this.audience = audience;
        this.purpose = purpose;
        this.at = at;
        look(inOrderOfIds);
        look(elsewhere);
        elsewhere.forEach(grant -> grantedElsewhere.add(grant.id()));
    }

    private void look(Iterable<Grant> grants) {
        for (var grant : grants) {
            if (Covering.speaksTo(grant, audience, purpose, at)) {
                byCollection
                        .computeIfAbsent(grant.collectionId(), id -> new ArrayList<>())
                        .add(grant);
            }
        }
    }

    /** Whether the audience acts for a party, or every party has granted it. */
    public boolean may(Subject subject, FieldGroup fieldGroup, Action action) {
        var parties = subject.parties();
        if (Covering.actsForOneOf(audience, parties)) {
            return true;
        }
        if (parties.isEmpty() || byCollection.isEmpty()) {
            return false;
        }
        var grants = new Grant[parties.size()];
        int granted = 0;
        for (var party : parties) {
            var grant = firstCovering(party, subject.animalId(), fieldGroup, action);
            if (grant == null) {
                return false;
            }
            grants[granted++] = grant;
        }
        for (var grant : grants) {
            grantsUsed.add(grant.id());
            if (grantedElsewhere.contains(grant.id())) {
                continue;
            }
            untold.computeIfAbsent(
                            new Use(grant.collectionId(), grant.id(), action), use -> new EnumMap<>(FieldGroup.class))
                    .computeIfAbsent(fieldGroup, group -> new HashSet<>())
                    .add(subject.animalId());
        }
        return true;
    }

    /** The grants that what was allowed so far rests on. */
    public Set<UUID> grantsUsed() {
        return Set.copyOf(grantsUsed);
    }

    public Basis basis() {
        var grantIds = new HashSet<UUID>();
        byCollection.values().forEach(grants -> grants.forEach(grant -> grantIds.add(grant.id())));
        return new Basis(audience.ownCollections(), grantIds);
    }

    public Audience audience() {
        return audience;
    }

    public Purpose purpose() {
        return purpose;
    }

    public Instant at() {
        return at;
    }

    /** The animals of which something was allowed since this was asked last, by grant, action and field group. */
    Map<Use, Map<FieldGroup, Set<UUID>>> untold() {
        var told = untold;
        untold = new HashMap<>();
        return told;
    }

    private @Nullable Grant firstCovering(UUID party, UUID animalId, FieldGroup fieldGroup, Action action) {
        for (var grant : byCollection.getOrDefault(party, List.of())) {
            if (Covering.includes(grant, animalId, fieldGroup, action)) {
                return grant;
            }
        }
        return null;
    }
}
