package org.demebook.litter;

import static org.demebook.problem.ProblemType.LITTER_DOES_NOT_ADD_UP;
import static org.demebook.problem.ProblemType.TWINS_NOT_POSSIBLE;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.demebook.litter.NewLitter.NewTwins;
import org.demebook.litter.NewLitter.NewYoung;
import org.demebook.notation.Sex;
import org.demebook.notation.Words;
import org.demebook.problem.Rule;
import org.demebook.registry.Breach;
import org.demebook.registry.Newborns.Neonate;

/** The live-born of a litter, from what is told of some of them one by one and from the counts. */
final class ToldYoung {
    private ToldYoung() {}

    /** As many as are live-born, in the order of their numbers; what contradicts the counts is added to the breaches. */
    static List<Neonate> neonates(NewLitter litter, Outcome outcome, List<Breach> breaches) {
        var told = Objects.requireNonNullElse(litter.young(), List.<NewYoung>of());
        if (told.size() > outcome.liveBorn()) {
            breaches.add(Breach.error(
                    LITTER_DOES_NOT_ADD_UP,
                    Rule.LITTER_DOES_NOT_ADD_UP,
                    "young",
                    told.size(),
                    "%d young are told one by one, but %d were live-born: %d too many."
                            .formatted(told.size(), outcome.liveBorn(), told.size() - outcome.liveBorn()),
                    null));
            return List.of();
        }
        checkTwins(litter, outcome, breaches);
        var malformed = malformed(told, outcome, breaches);
        var neonates = new ArrayList<Neonate>();
        for (int i = 0; i < outcome.liveBorn(); i++) {
            neonates.add(i < told.size() ? neonate(told.get(i), malformed[i]) : counted(malformed[i]));
        }
        return neonates;
    }

    static Neonate counted(boolean malformed) {
        return new Neonate(Sex.UNKNOWN, malformed, null, List.of(), null);
    }

    static List<NewTwins> twins(NewLitter litter) {
        return Objects.requireNonNullElse(litter.twins(), List.of());
    }

    private static void checkTwins(NewLitter litter, Outcome outcome, List<Breach> breaches) {
        for (var twins : twins(litter)) {
            if (twins.young().stream().anyMatch(place -> place >= outcome.liveBorn())) {
                breaches.add(Breach.error(
                        TWINS_NOT_POSSIBLE,
                        "twins",
                        twins.young(),
                        "Twins are named by their places among the live-born, from 0 to %d here."
                                .formatted(outcome.liveBorn() - 1)));
            }
        }
    }

    /** Which of the live-born are malformed: those that are told, and the last ones for those that are counted only. */
    private static boolean[] malformed(List<NewYoung> told, Outcome outcome, List<Breach> breaches) {
        var malformed = new boolean[outcome.liveBorn()];
        int left = outcome.malformedLive();
        for (int i = 0; i < told.size(); i++) {
            malformed[i] = Boolean.TRUE.equals(told.get(i).malformed());
            left -= malformed[i] ? 1 : 0;
        }
        for (int i = malformed.length - 1; i >= 0 && left > 0; i--) {
            if (i >= told.size() || told.get(i).malformed() == null) {
                malformed[i] = true;
                left--;
            }
        }
        if (left != 0 && outcome.malformedLive() <= outcome.liveBorn()) {
            breaches.add(Breach.error(
                    LITTER_DOES_NOT_ADD_UP,
                    Rule.LITTER_DOES_NOT_ADD_UP,
                    "malformedLive",
                    outcome.malformedLive(),
                    "%d of the live-born are counted as malformed, but %d are told one by one; which is right?"
                            .formatted(outcome.malformedLive(), outcome.malformedLive() - left),
                    null));
        }
        return malformed;
    }

    private static Neonate neonate(NewYoung young, boolean malformed) {
        return new Neonate(
                Objects.requireNonNullElse(young.sex(), Sex.UNKNOWN),
                malformed,
                young.ownReference(),
                Objects.requireNonNullElse(young.marks(), List.of()),
                Words.orNull(young.notes()));
    }
}
