package org.demebook.web.animal;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.demebook.ancestry.AncestryView.Ancestor;
import org.demebook.ancestry.ChartedAncestry;
import org.demebook.chart.Figure;
import org.demebook.chart.Figure.Sex;
import org.demebook.chart.Figure.Sight;
import org.demebook.chart.Figure.SireLink;
import org.demebook.notation.RoughDate;
import org.demebook.registry.StatedSire;
import org.demebook.registry.StatedSire.StatedCandidate;
import org.demebook.web.Visit;
import org.jspecify.annotations.Nullable;

/**
 * The figures of an ancestry's chart: everybody who is shown; parents that are not shown, and parents that nobody knows, each as
 * such; what lies behind the last generation not at all.
 */
final class AncestryFigures {
    private final ChartedAncestry charted;
    private final Visit visit;
    private final Set<String> listed;
    private final List<Figure> figures = new ArrayList<>();
    private final List<Figure> beside = new ArrayList<>();

    private AncestryFigures(ChartedAncestry charted, Visit visit) {
        this.charted = charted;
        this.visit = visit;
        this.listed = everybody().map(Ancestor::number).collect(Collectors.toSet());
    }

    static List<Figure> of(ChartedAncestry charted, Visit visit) {
        var all = new AncestryFigures(charted, visit);
        all.everybody().forEach(all::add);
        all.figures.addAll(all.beside);
        return all.figures;
    }

    private Stream<Ancestor> everybody() {
        var ancestry = charted.ancestry();
        return Stream.concat(Stream.of(ancestry.animal()), ancestry.ancestors().stream());
    }

    private void add(Ancestor one) {
        var number = one.number();
        var asked = one.generation() == 0;
        var dam = dam(one);
        figures.add(new Figure(
                number,
                one.born() == null ? List.of(number) : List.of(number, visit.day(RoughDate.parse(one.born()))),
                sex(one.sex()),
                Sight.SHOWN,
                !one.alive(),
                charted.founders().contains(number),
                asked,
                dam,
                sires(one),
                one.sire().kind().equals("known")
                        ? !one.sire().inDoubt()
                        : !one.sire().kind().equals("candidates"),
                asked ? null : address(number)));
    }

    private @Nullable String dam(Ancestor one) {
        if (charted.parentsNotShown().contains(one.number())) {
            return isBefore(one) ? withheld(one.number() + "/dam", Sex.FEMALE) : null;
        }
        if (one.dam() == null) {
            return isBefore(one) && !isFounder(one) ? unknown(one.number() + "/dam", Sex.FEMALE) : null;
        }
        return parent(one, one.dam(), Sex.FEMALE);
    }

    private List<SireLink> sires(Ancestor one) {
        if (charted.parentsNotShown().contains(one.number())) {
            return isBefore(one) ? link(one, withheld(one.number() + "/sire", Sex.MALE)) : List.of();
        }
        StatedSire sire = one.sire();
        return switch (sire.kind()) {
            case "known" -> link(one, parent(one, String.valueOf(sire.animal()), Sex.MALE));
            case "candidates" ->
                (sire.candidates() == null ? List.<StatedCandidate>of() : sire.candidates())
                        .stream()
                                .flatMap(candidate -> link(one, parent(one, candidate.animal(), Sex.MALE)).stream())
                                .toList();
            case "none" -> List.of();
            default ->
                isBefore(one) && !isFounder(one) ? link(one, unknown(one.number() + "/sire", Sex.MALE)) : List.of();
        };
    }

    /** Whether its parents belong to the generations that were asked for. */
    private boolean isBefore(Ancestor one) {
        return one.generation() < charted.ancestry().generations();
    }

    private boolean isFounder(Ancestor one) {
        return charted.founders().contains(one.number());
    }

    private List<SireLink> link(Ancestor young, @Nullable String sire) {
        var related = charted.relatedSires().getOrDefault(young.number(), Set.of());
        return sire == null ? List.of() : List.of(new SireLink(sire, related.contains(sire)));
    }

    /** A parent that is named: one that is shown, or one of whom the number is all that is. */
    private @Nullable String parent(Ancestor young, String number, Sex sex) {
        if (listed.contains(number)) {
            return number;
        }
        if (!isBefore(young)) {
            return null;
        }
        if (beside.stream().noneMatch(figure -> figure.key().equals(number))) {
            beside.add(new Figure(
                    number, List.of(number), sex, Sight.WITHHELD, false, false, false, null, List.of(), true, null));
        }
        return number;
    }

    private String withheld(String key, Sex sex) {
        beside.add(Figure.withheld(key, sex));
        return key;
    }

    private String unknown(String key, Sex sex) {
        beside.add(Figure.unknown(key, sex));
        return key;
    }

    private static Sex sex(org.demebook.notation.Sex sex) {
        return switch (sex) {
            case FEMALE -> Sex.FEMALE;
            case MALE -> Sex.MALE;
            case UNKNOWN -> Sex.UNKNOWN;
        };
    }

    private String address(String number) {
        return visit.getBase() + "/animals/" + number;
    }
}
