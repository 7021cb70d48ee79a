package org.demebook.web.rearing;

import java.util.Arrays;
import java.util.List;
import org.demebook.notation.Length;
import org.demebook.notation.Mass;
import org.demebook.web.Option;

/** What the form of a care record offers. */
public record Choices(
        List<Option> complete,
        List<Option> outcomes,
        List<Option> results,
        List<Option> lengthKinds,
        List<String> massUnits,
        List<String> lengthUnits) {
    static Choices in(RearingMessages words) {
        return new Choices(
                List.of(
                        Option.none(words.skinNotSaid()),
                        new Option("true", words.skinWhole()),
                        new Option("false", words.skinInPieces())),
                List.of(
                        new Option("taken", words.taken()),
                        new Option("assisted", words.assisted()),
                        new Option("refused", words.refused())),
                List.of(
                        new Option("negative", words.negative()),
                        new Option("positive", words.positive()),
                        new Option("unclear", words.unclear())),
                List.of(new Option("snout-vent", words.snoutVent()), new Option("total", words.total())),
                Arrays.stream(Mass.Unit.values()).map(Mass.Unit::word).toList(),
                Arrays.stream(Length.Unit.values()).map(Length.Unit::word).toList());
    }
}
