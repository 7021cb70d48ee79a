package org.demebook.consent;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.demebook.keeper.Role;

/** What members may see of collections that each give four grants, as a ready choice does; of every other one less. */
public final class LensOf {
    private static final Instant NOW = Instant.parse("2026-11-28T09:00:00Z");

    private final Audience audience;
    private final List<Grant> grants = new ArrayList<>();

    /** @param own collection of the asker; it and the first of the others share nothing */
    public LensOf(UUID own, List<UUID> collections) {
        audience = new Audience(new UUID(1, 1), new UUID(2, 2), Role.MEMBER, Set.of(own));
        for (int i = 1; i < collections.size(); i++) {
            for (var action : List.of(Action.COMPUTE, Action.READ)) {
                if (action == Action.COMPUTE || i % 2 == 0) {
                    grant(collections.get(i), action, FieldGroup.IDENTITY, FieldGroup.PARENTAGE);
                    grant(collections.get(i), action, FieldGroup.HEALTH, FieldGroup.COARSE_PLACE);
                }
            }
        }
    }

    private void grant(UUID collection, Action action, FieldGroup... fieldGroups) {
        grants.add(new Grant(
                new UUID(3, grants.size()),
                collection,
                new UUID(4, 4),
                Recipient.MEMBERS,
                Scope.WHOLE_COLLECTION,
                Set.of(fieldGroups),
                Set.of(Purpose.PEDIGREE_VIEW, Purpose.PAIRING_COMPUTATION),
                Set.of(action),
                NOW.minus(Duration.ofDays(1)),
                NOW.plus(Duration.ofDays(30)),
                null,
                "1",
                null,
                null));
    }

    public Lens lens() {
        return new Lens(audience, Purpose.PEDIGREE_VIEW, NOW, grants);
    }
}
