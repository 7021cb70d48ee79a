package org.demebook.consent;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import org.demebook.consent.NewGrant.StatedRecipient;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;

/** Grants with the names of keepers and the numbers of animals in place of ids. */
@ApplicationScoped
class GrantViews {
    @Inject
    Keepers keepers;

    @Inject
    AnimalNumbers animals;

    List<GrantView> of(Standing by, List<GrantRow> rows, Instant now) {
        var keeperIds = new HashSet<UUID>();
        var animalIds = new HashSet<UUID>();
        for (var row : rows) {
            keeperIds.add(row.givenBy);
            if (row.recipientKeeper != null) {
                keeperIds.add(row.recipientKeeper);
            }
            if (row.animalIds != null) {
                animalIds.addAll(Arrays.asList(row.animalIds));
            }
        }
        var names = keepers.names(keeperIds);
        var numbers = animals.numbers(by.populationId(), animalIds);
        return rows.stream().map(row -> view(row, names, numbers, now)).toList();
    }

    private static GrantView view(GrantRow row, Map<UUID, String> names, Map<UUID, String> numbers, Instant now) {
        return new GrantView(
                row.id,
                row.collectionId,
                names.get(row.givenBy),
                row.givenAt,
                new StatedRecipient(
                        Recipient.Kind.parse(row.recipient),
                        row.recipientKeeper == null ? null : names.get(row.recipientKeeper),
                        row.recipientNode),
                row.animalIds == null
                        ? null
                        : Arrays.stream(row.animalIds)
                                .map(numbers::get)
                                .sorted()
                                .toList(),
                inOrder(row.fieldGroups, FieldGroup::parse),
                inOrder(row.purposes, Purpose::parse),
                inOrder(row.actions, Action::parse),
                row.fromAt,
                row.untilAt,
                row.conditions,
                row.noticeVersion,
                row.choice == null ? null : ReadyChoice.parse(row.choice),
                row.renews,
                row.grant().state(now),
                row.withdrawnAt,
                row.supersededAt,
                row.revision);
    }

    private static <E extends Enum<E>> List<E> inOrder(String[] words, Function<String, E> parse) {
        return Arrays.stream(words).map(parse).sorted().toList();
    }
}
