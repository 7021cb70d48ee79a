package org.demebook.web.animal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.TreeSet;
import org.demebook.consent.Action;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.GrantView;
import org.demebook.consent.NewGrant.StatedRecipient;
import org.demebook.registry.AnimalView;

/**
 * What somebody may see of an animal by a live grant, or have computed with.
 *
 * @param shown whether it is shown, and not only computed with
 * @param alone whether the grant is about this animal, or some, and not about all of the collection
 */
public record SharedWith(
        StatedRecipient recipient, List<FieldGroup> fieldGroups, boolean shown, boolean alone, Instant until) {

    /** @param grants that are live, of the one who looks */
    static List<SharedWith> of(AnimalView animal, List<GrantView> grants) {
        var held = animal.held();
        record Key(StatedRecipient recipient, boolean shown, boolean alone, Instant until) {}
        var groups = new LinkedHashMap<Key, TreeSet<FieldGroup>>();
        for (var grant : grants) {
            boolean covers = grant.animals() == null || grant.animals().contains(animal.number());
            if (held != null
                    && covers
                    && (grant.collection().equals(held.collection())
                            || grant.collection().equals(held.owner()))) {
                var shown = grant.actions().contains(Action.READ);
                groups.computeIfAbsent(
                                new Key(grant.recipient(), shown, grant.animals() != null, grant.until()),
                                key -> new TreeSet<>())
                        .addAll(grant.fieldGroups());
            }
        }
        var shared = new ArrayList<SharedWith>();
        groups.forEach((key, of) ->
                shared.add(new SharedWith(key.recipient(), List.copyOf(of), key.shown(), key.alone(), key.until())));
        return shared;
    }
}
