package org.demebook.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.demebook.ancestry.FigureRange;
import org.demebook.ancestry.Snapshot;
import org.demebook.kinship.Convention;
import org.demebook.kinship.GenePool;
import org.demebook.planning.PairingsView.Kept;
import org.demebook.planning.PairingsView.Pairing;
import org.demebook.planning.PairingsView.Parent;
import org.demebook.planning.Ranking.Pair;
import org.jspecify.annotations.Nullable;

/** What a pair would do, in figures and in words. */
record Advice(Sighted sighted, GenePool pool, int mostYoung) {
    private static final double ROUNDING = 1e-12;

    Pairing of(Pair pair) {
        var kept = IntStream.rangeClosed(0, mostYoung)
                .mapToObj(young -> new Kept(
                        young, pool.withLitter(pair.sire(), pair.dam(), young).geneDiversity()))
                .toList();
        int keep = best(kept);
        return new Pairing(
                parent(pair.dam(), pair.sire()),
                parent(pair.sire(), pair.dam()),
                pair.kinship(),
                worstCase(pair),
                FigureRange.ofKinship(snapshot().pedigree(), pair.dam(), pair.sire()),
                pair.meanKinship(),
                keep,
                kept,
                reason(pair, kept, keep),
                snapshot().doubtfulSiresOf(pair.dam(), pair.sire()),
                sighted.candidates().notes(pair.dam(), pair.sire()));
    }

    private Snapshot snapshot() {
        return sighted.snapshot();
    }

    private @Nullable Double worstCase(Pair pair) {
        var pedigree = snapshot().pedigree();
        return pedigree.knownFraction(pair.dam()) >= 1 - ROUNDING && pedigree.knownFraction(pair.sire()) >= 1 - ROUNDING
                ? null
                : pedigree.under(Convention.UNKNOWN_FULL_SIBS).kinship(pair.dam(), pair.sire());
    }

    private Parent parent(int row, int partner) {
        return new Parent(
                snapshot().number(row),
                pool.meanKinship(row),
                snapshot().pedigree().knownFraction(row),
                sighted.keptBy(row, partner));
    }

    /** The fewest that leave most. */
    private static int best(List<Kept> kept) {
        int best = 0;
        for (int young = 1; young < kept.size(); young++) {
            if (kept.get(young).geneDiversity() > kept.get(best).geneDiversity() + ROUNDING) {
                best = young;
            }
        }
        return best;
    }

    private String reason(Pair pair, List<Kept> kept, int keep) {
        var sentences = new ArrayList<String>();
        sentences.add(
                pair.kinship() <= ROUNDING
                        ? "As far as is known they are unrelated."
                        : "They are related: their young would have an inbreeding coefficient of %s."
                                .formatted(figure(pair.kinship())));
        for (int row : new int[] {pair.dam(), pair.sire()}) {
            rarity(row, sentences);
            gaps(row, sentences);
        }
        sentences.add(howMany(kept, keep));
        return String.join(" ", sentences);
    }

    private void rarity(int row, List<String> sentences) {
        double own = pool.meanKinship(row);
        if (own < pool.meanKinship()) {
            sentences.add("%s carries genes that are rare in the population (mean kinship %s, of all %s)."
                    .formatted(snapshot().number(row), figure(own), figure(pool.meanKinship())));
        }
    }

    private void gaps(int row, List<String> sentences) {
        double known = snapshot().pedigree().knownFraction(row);
        if (known < 1 - ROUNDING) {
            sentences.add("Of the ancestry of %s only %d %% is known: it may be closer to the others than it looks."
                    .formatted(snapshot().number(row), Math.round(100 * known)));
        }
    }

    private String howMany(List<Kept> kept, int keep) {
        double now = kept.get(0).geneDiversity();
        if (keep == 0) {
            return "Each young kept would lower gene diversity (now %s).".formatted(figure(now));
        }
        var advice = "Keep %d of the young: gene diversity %s → %s"
                .formatted(keep, figure(now), figure(kept.get(keep).geneDiversity()));
        for (int young = keep + 1; young < kept.size(); young++) {
            if (kept.get(young).geneDiversity() < now - ROUNDING) {
                return advice + "; from %d on it falls below today's.".formatted(young);
            }
        }
        return advice + ".";
    }

    private static String figure(double value) {
        return String.format(Locale.ROOT, "%.4f", value);
    }
}
