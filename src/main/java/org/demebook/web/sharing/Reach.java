package org.demebook.web.sharing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.function.Predicate;
import org.demebook.consent.Action;
import org.demebook.consent.EffectView;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.NewGrant.StatedRecipient;
import org.demebook.consent.Purpose;
import org.demebook.consent.Recipient.Kind;
import org.jspecify.annotations.Nullable;

/**
 * How far something reaches: what somebody may do with which parts of how many animals, for all the purposes that is the same for.
 * Members are told of only where they may more than everybody, and coordinators where they may more than members.
 *
 * @param before of how many animals they may do it now
 * @param after of how many they might do it then
 */
public record Reach(
        StatedRecipient recipient,
        Action action,
        List<FieldGroup> fieldGroups,
        List<Purpose> purposes,
        int before,
        int after) {

    private record Same(
            StatedRecipient recipient, Action action, List<FieldGroup> fieldGroups, int before, int after) {}

    static List<Reach> now(EffectView effect) {
        return of(effect, line -> line.animalsBefore() > 0);
    }

    static List<Reach> changed(EffectView effect) {
        return of(effect, line -> line.animalsBefore() != line.animalsAfter());
    }

    private static List<Reach> of(EffectView effect, Predicate<EffectView.Line> wanted) {
        var purposes = new LinkedHashMap<Same, List<Purpose>>();
        var lines = effect.lines().stream().filter(wanted).toList();
        for (var line : lines) {
            if (lines.stream().noneMatch(other -> saysSameOfMore(other, line))) {
                var same = new Same(
                        line.recipient(), line.action(), line.fieldGroups(), line.animalsBefore(), line.animalsAfter());
                purposes.computeIfAbsent(same, first -> new ArrayList<>()).add(line.purpose());
            }
        }
        return purposes.entrySet().stream()
                .map(entry -> new Reach(
                        entry.getKey().recipient(),
                        entry.getKey().action(),
                        entry.getKey().fieldGroups(),
                        entry.getValue(),
                        entry.getKey().before(),
                        entry.getKey().after()))
                .toList();
    }

    private static boolean saysSameOfMore(EffectView.Line other, EffectView.Line line) {
        return includes(other.recipient().kind(), line.recipient().kind())
                && other.purpose() == line.purpose()
                && other.action() == line.action()
                && other.fieldGroups().containsAll(line.fieldGroups())
                && other.animalsBefore() == line.animalsBefore()
                && other.animalsAfter() == line.animalsAfter();
    }

    private static boolean includes(Kind more, @Nullable Kind fewer) {
        return switch (more) {
            case PUBLIC -> fewer == Kind.MEMBERS || fewer == Kind.COORDINATORS;
            case MEMBERS -> fewer == Kind.COORDINATORS;
            case COORDINATORS, KEEPER, NODE -> false;
        };
    }
}
