package org.demebook.telling;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.util.ArrayList;
import java.util.List;
import org.demebook.consent.Action;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.consent.Purpose;
import org.demebook.consent.Subject;

/**
 * What one node, and so its members, may know of one animal: number and parents, to look at ancestry and to pair animals, to be read
 * and to be computed with. What is granted of the parents counts where the animal itself does for the same purpose.
 *
 * @param bits one for each purpose, field group and action
 */
record Granted(int bits) {
    static final List<Purpose> PURPOSES = List.of(Purpose.PEDIGREE_VIEW, Purpose.PAIRING_COMPUTATION);
    private static final List<FieldGroup> GROUPS = List.of(FieldGroup.IDENTITY, FieldGroup.PARENTAGE);
    private static final List<Action> ACTIONS = List.of(Action.READ, Action.COMPUTE);

    static final Granted NOTHING = new Granted(0);

    /** Everything to be computed with and nothing to be read: what a bare skeleton is told for. */
    static final Granted SKELETON = all(Action.COMPUTE);

    /** Everything to be read. */
    static final Granted READ = all(Action.READ);

    private interface Each {
        void of(Purpose purpose, FieldGroup group, Action action);
    }

    private static void each(Each each) {
        for (var purpose : PURPOSES) {
            for (var group : GROUPS) {
                ACTIONS.forEach(action -> each.of(purpose, group, action));
            }
        }
    }

    private static int bit(Purpose purpose, FieldGroup group, Action action) {
        return 1
                << (PURPOSES.indexOf(purpose) * GROUPS.size() + GROUPS.indexOf(group)) * ACTIONS.size()
                        + ACTIONS.indexOf(action);
    }

    private static Granted all(Action granted) {
        int[] bits = {0};
        each((purpose, group, action) -> bits[0] |= action == granted ? bit(purpose, group, action) : 0);
        return new Granted(bits[0]);
    }

    /** @param lenses of one audience, one for each of {@link #PURPOSES} */
    static Granted of(List<Lens> lenses, Subject subject) {
        int bits = 0;
        for (var lens : lenses) {
            int ofPurpose = 0;
            for (var action : ACTIONS) {
                ofPurpose |= lens.may(subject, FieldGroup.IDENTITY, action)
                        ? bit(lens.purpose(), FieldGroup.IDENTITY, action)
                        : 0;
            }
            if (ofPurpose != 0) {
                for (var action : ACTIONS) {
                    ofPurpose |= lens.may(subject, FieldGroup.PARENTAGE, action)
                            ? bit(lens.purpose(), FieldGroup.PARENTAGE, action)
                            : 0;
                }
            }
            bits |= ofPurpose;
        }
        return new Granted(bits);
    }

    boolean may(Purpose purpose, FieldGroup group, Action action) {
        return (bits & bit(purpose, group, action)) != 0;
    }

    private boolean any(FieldGroup group, Action action) {
        return PURPOSES.stream().anyMatch(purpose -> may(purpose, group, action));
    }

    boolean isNothing() {
        return bits == 0;
    }

    boolean readsNumber() {
        return any(FieldGroup.IDENTITY, Action.READ);
    }

    boolean tellsParents() {
        return any(FieldGroup.PARENTAGE, Action.READ) || any(FieldGroup.PARENTAGE, Action.COMPUTE);
    }

    /** By whoever reads the animal's own number for the same purpose. */
    boolean readsParents() {
        return PURPOSES.stream()
                .anyMatch(purpose -> may(purpose, FieldGroup.IDENTITY, Action.READ)
                        && may(purpose, FieldGroup.PARENTAGE, Action.READ));
    }

    /** The field groups that are granted for one purpose and action. */
    List<FieldGroup> groups(Purpose purpose, Action action) {
        return GROUPS.stream().filter(group -> may(purpose, group, action)).toList();
    }

    // ── between nodes ────────────────────────────────────────────────────────────────────────────────────────────────

    ArrayNode json() {
        var json = JsonNodeFactory.instance.arrayNode();
        var words = new ArrayList<String>();
        each((purpose, group, action) -> {
            if (may(purpose, group, action)) {
                words.add(word(purpose, group, action));
            }
        });
        words.forEach(json::add);
        return json;
    }

    /** Words that are not known grant nothing; it may come from anybody. */
    static Granted read(JsonNode json) {
        int[] bits = {0};
        for (var item : json) {
            each((purpose, group, action) ->
                    bits[0] |= word(purpose, group, action).equals(item.textValue()) ? bit(purpose, group, action) : 0);
        }
        return new Granted(bits[0]);
    }

    private static String word(Purpose purpose, FieldGroup group, Action action) {
        return "%s %s %s".formatted(purpose.word(), group.word(), action.word());
    }
}
