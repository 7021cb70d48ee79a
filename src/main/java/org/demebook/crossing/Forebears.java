package org.demebook.crossing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.demebook.crossing.CrossingView.ToldForebear;
import org.demebook.crossing.HandedRecord.Forebear;
import org.demebook.protocol.AnimalId;
import org.jspecify.annotations.Nullable;

/** The ancestors that a record tells, in the order of their lines: the parents, then theirs. */
final class Forebears {
    private static final int GENERATIONS = 5;
    private static final int WHOLE = 1_000_000;

    private record OnLine(
            String line, Forebear forebear, @Nullable Integer share) {}

    private Forebears() {}

    /** However the record may be knotted, it ends after five generations or at the most that a record tells. */
    static List<ToldForebear> of(HandedRecord record) {
        if (record.forebears().isEmpty()) {
            return List.of();
        }
        Map<AnimalId, Forebear> byId = record.forebears().stream()
                .collect(Collectors.toMap(Forebear::animal, Function.identity(), (first, again) -> first));
        var told = new ArrayList<ToldForebear>();
        var generation = List.of(new OnLine("", record.forebears().get(0), null));
        for (int i = 0; i < GENERATIONS; i++) {
            var parents = new ArrayList<OnLine>();
            for (var young : generation) {
                parentsOf(young, byId, parents);
            }
            for (var parent : parents) {
                if (told.size() < HandedRecord.MOST_FOREBEARS) {
                    told.add(view(parent));
                }
            }
            generation = parents.subList(0, Math.min(parents.size(), HandedRecord.MOST_FOREBEARS));
        }
        return told;
    }

    private static void parentsOf(OnLine young, Map<AnimalId, Forebear> byId, List<OnLine> parents) {
        var dam = young.forebear.dam() == null ? null : byId.get(young.forebear.dam());
        if (dam != null) {
            parents.add(new OnLine(line(young, "dam"), dam, null));
        }
        for (var share : young.forebear.sires()) {
            var sire = byId.get(share.sire());
            if (sire != null) {
                parents.add(new OnLine(
                        line(young, "sire"), sire, share.share() == WHOLE ? null : share.share() / (WHOLE / 100)));
            }
        }
    }

    private static String line(OnLine young, String parent) {
        return young.line.isEmpty() ? parent : young.line + "-" + parent;
    }

    private static ToldForebear view(OnLine on) {
        return new ToldForebear(
                on.line,
                on.forebear.number() == null ? null : on.forebear.number().toString(),
                on.forebear.sex(),
                on.forebear.born(),
                on.share);
    }
}
