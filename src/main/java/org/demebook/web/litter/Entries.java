package org.demebook.web.litter;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.demebook.breeding.Cycles;
import org.demebook.breeding.IntroductionView;
import org.demebook.breeding.Introductions;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.Sex;
import org.demebook.registry.Animals;
import org.demebook.rest.Page;
import org.demebook.web.Typed;
import org.demebook.web.breeding.Awaited;

/** Gathers what a litter is entered with. */
@ApplicationScoped
class Entries {
    /** A female that is not awaited is chosen from a list of its own. */
    static final String OTHER = "other";

    private static final int MOST_ROWS = 60;

    @Inject
    Cycles cycles;

    @Inject
    Introductions introductions;

    @Inject
    Animals animals;

    @Inject
    Keepers keepers;

    /** @param typed in which the female is put where she is to be chosen */
    @Transactional
    Entry of(Standing by, Typed typed, LocalDate today) {
        var awaited = cycles.awaited(by, today).stream().map(Awaited::of).toList();
        var awaitedNumbers = awaited.stream().map(one -> one.cycle().female()).toList();
        var meetings = introductions.page(by, null, null, null, Page.MOST).items().stream()
                .filter(meeting -> awaitedNumbers.contains(meeting.female()))
                .toList();
        var others = animals.heldNumbers(by, Sex.FEMALE).stream()
                .filter(number -> !awaitedNumbers.contains(number))
                .toList();
        var dam = typed.value("dam");
        if (!dam.isEmpty() && !dam.equals(OTHER) && !awaitedNumbers.contains(dam)) {
            typed.with("dam", OTHER).with("otherDam", dam);
        } else if (dam.isEmpty() && awaited.isEmpty()) {
            typed.with("dam", OTHER);
        }
        var males = new LinkedHashSet<String>();
        meetings.stream().map(IntroductionView::male).forEach(males::add);
        males.addAll(animals.heldNumbers(by, Sex.MALE));
        var collections = keepers.collections(by);
        return new Entry(
                awaited,
                others,
                meetings,
                List.copyOf(males),
                collections.size() > 1 ? collections : List.of(),
                rows(typed));
    }

    /** As many as something was told of. */
    private static List<Entry.Row> rows(Typed typed) {
        int told = IntStream.range(0, MOST_ROWS)
                .filter(place -> isTold(typed, place))
                .map(place -> place + 1)
                .max()
                .orElse(0);
        return IntStream.range(0, told).mapToObj(place -> row(typed, place)).toList();
    }

    private static boolean isTold(Typed typed, int place) {
        return typed.text(field(place, "sex")) != null
                || typed.text(field(place, "ownReference")) != null
                || !BirthMasses.written(typed, place).isBlank();
    }

    private static Entry.Row row(Typed typed, int place) {
        var wrong = Stream.of(
                        typed.wrong(field(place, "sex")),
                        typed.wrong(field(place, "ownReference")),
                        typed.wrong("masses[%d]".formatted(place)))
                .filter(Objects::nonNull)
                .collect(Collectors.joining(" "));
        return new Entry.Row(
                "" + place,
                "" + (place + 1),
                typed.value(field(place, "sex")),
                typed.value(field(place, "ownReference")),
                BirthMasses.written(typed, place),
                wrong.isEmpty() ? null : wrong);
    }

    private static String field(int place, String name) {
        return "young[%d].%s".formatted(place, name);
    }
}
