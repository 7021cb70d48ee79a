package org.demebook.web.breeding;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.demebook.breeding.SignKind;
import org.demebook.gestation.HowKnown;
import org.demebook.keeper.Standing;
import org.demebook.notation.Sex;
import org.demebook.registry.Animals;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.jspecify.annotations.Nullable;

/** What the forms of breeding offer to choose from. */
@ApplicationScoped
class BreedingChoices {
    @Inject
    Animals animals;

    @Inject
    Pages pages;

    /** The keeper's living animals of a sex, after an entry that chooses none. */
    List<Option> animals(Standing by, Sex sex) {
        return withNone(animals.heldNumbers(by, sex).stream().map(number -> new Option(number, number)));
    }

    /** The same, and one more that is chosen already. */
    List<Option> animals(Standing by, Sex sex, @Nullable String chosen) {
        var options = new ArrayList<>(animals(by, sex));
        if (chosen != null
                && !chosen.isBlank()
                && options.stream().noneMatch(option -> option.value().equals(chosen))) {
            options.add(new Option(chosen, chosen));
        }
        return options;
    }

    List<Option> kinds(boolean laysEggs) {
        return Arrays.stream(SignKind.values())
                .filter(kind -> laysEggs || kind != SignKind.LAYING)
                .map(kind -> new Option(kind.word(), words().kind(kind)))
                .toList();
    }

    List<Option> howKnown() {
        return Arrays.stream(HowKnown.values())
                .map(how -> new Option(how.word(), words().howKnown(how)))
                .toList();
    }

    private List<Option> withNone(Stream<Option> options) {
        return Stream.concat(Stream.of(new Option("", words().choose())), options)
                .toList();
    }

    private BreedingMessages words() {
        return pages.words(BreedingMessages.class);
    }
}
