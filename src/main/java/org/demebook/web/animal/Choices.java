package org.demebook.web.animal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.notation.SourceCode;
import org.demebook.registry.LocalityClaim.Certainty;
import org.demebook.registry.SexDetermination.Confidence;
import org.demebook.registry.SexDetermination.Method;
import org.demebook.web.FrameMessages;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;

/** What may be chosen in the forms about animals, in the language of the one who looks. */
public record Choices(AnimalMessages words, CorrectionMessages forms, FrameMessages frame) {
    static Choices of(Pages pages) {
        return new Choices(
                pages.words(AnimalMessages.class),
                pages.words(CorrectionMessages.class),
                pages.words(FrameMessages.class));
    }

    public List<Option> getWhich() {
        return List.of(new Option("mine", words.mine()), new Option("all", words.all()));
    }

    public List<Option> getStates() {
        return List.of(
                new Option("living", words.living()),
                new Option("dead", words.dead()),
                new Option("both", words.livingAndDead()));
    }

    public List<Option> getSexes() {
        return options(Sex.values(), Sex::word, frame::sex);
    }

    public List<Option> getSexesOrAny() {
        return orNone(words.anySex(), getSexes());
    }

    public List<Option> getOrigins() {
        return options(Origin.values(), Origin::word, forms::originWord);
    }

    /** The letters; what they mean stands on the document, in its language. */
    public List<Option> getSourceCodes() {
        return orNone(forms.notSaid(), options(SourceCode.values(), SourceCode::letter, SourceCode::letter));
    }

    public List<Option> getMethods() {
        return orNone(forms.notSaid(), options(Method.values(), Method::word, forms::sexMethod));
    }

    public List<Option> getConfidences() {
        return orNone(forms.notSaid(), options(Confidence.values(), Confidence::word, forms::sexConfidence));
    }

    public List<Option> getCertainties() {
        return options(Certainty.values(), Certainty::word, forms::certaintyWord);
    }

    public List<Option> getCertaintiesOrNone() {
        return orNone(forms.notSaid(), getCertainties());
    }

    /** Rows for males that it may be: those that stand there and one more, three at least. */
    public List<Integer> candidatePlaces(Typed typed) {
        int rows = 0;
        while (typed.text(candidateAnimal(rows)) != null || typed.text(candidateProbability(rows)) != null) {
            rows++;
        }
        return IntStream.rangeClosed(0, Math.max(2, rows)).boxed().toList();
    }

    public String candidateAnimal(int place) {
        return "sire.candidates[%d].animal".formatted(place);
    }

    public String candidateProbability(int place) {
        return "sire.candidates[%d].probability".formatted(place);
    }

    public List<Option> getYesNo() {
        return List.of(new Option("false", frame.no()), new Option("true", frame.yes()));
    }

    public List<Option> getSireKinds() {
        return List.of(
                new Option("known", forms.sireKindKnown()),
                new Option("unknown", forms.sireKindUnknown()),
                new Option("candidates", forms.sireKindCandidates()),
                new Option("none", forms.sireKindNone()));
    }

    public List<Option> getIdentifierKinds() {
        return options(
                new String[] {"transponder", "mark", "own-reference"}, Function.identity(), forms::identifierKind);
    }

    private static <T> List<Option> options(T[] values, Function<T, String> value, Function<T, String> label) {
        return Arrays.stream(values)
                .map(one -> new Option(value.apply(one), label.apply(one)))
                .toList();
    }

    private static List<Option> orNone(String none, List<Option> options) {
        var all = new ArrayList<Option>();
        all.add(Option.none(none));
        all.addAll(options);
        return all;
    }
}
