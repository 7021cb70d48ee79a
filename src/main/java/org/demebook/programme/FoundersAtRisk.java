package org.demebook.programme;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.demebook.programme.OutlookView.LastChance;
import org.demebook.season.AfterLitters;
import org.demebook.season.FounderLine;
import org.demebook.season.FounderLines;
import org.demebook.season.Living;

/**
 * Founders whose genes hang on few animals. Only animals whose whole ancestry the asker may see are looked at: of any other it would tell
 * whose descendant it is.
 */
final class FoundersAtRisk {
    /** Of a founder whose genes more animals may hand on, nothing is said. */
    private static final int FEW = 2;

    private static final int DRAWS = 400;
    private static final int LOCI = 16;

    private final PoolToday pool;
    private final PlanSight sight;
    private final List<LastChance> chances = new ArrayList<>();
    private final List<UUID> shown = new ArrayList<>();

    FoundersAtRisk(PoolToday pool, PlanSight sight, long seed) {
        this.pool = pool;
        this.sight = sight;
        var seen = pool.living.stream().filter(animal -> isSeen(animal.row())).toList();
        var litters = pool.litters.stream()
                .filter(litter -> isSeen(litter.dam()) && isSeen(litter.sire()))
                .toList();
        var lines = FounderLines.of(pool.pedigree, seen, litters).stream()
                .filter(line -> isAtRisk(line) && name(line.founder()).isPresent())
                .toList();
        int[] staying =
                seen.stream().filter(Living::stays).mapToInt(Living::row).toArray();
        int[] founders = lines.stream().mapToInt(FounderLine::founder).toArray();
        if (lines.isEmpty()) {
            return;
        }
        var lost = AfterLitters.drawn(pool.pedigree, staying, litters, DRAWS, LOCI, seed, founders)
                .lost();
        for (int i = 0; i < founders.length; i++) {
            tell(lines.get(i), lost.get(i).value());
        }
    }

    private boolean isSeen(int row) {
        return row >= pool.snapshot().size()
                || name(row).isPresent() && !pool.snapshot().restsOnWhatIsNotShown(row);
    }

    private Optional<String> name(int row) {
        return row >= pool.snapshot().size()
                ? Optional.of("new founder " + (row - pool.snapshot().size() + 1))
                : sight.number(pool.snapshot().id(row));
    }

    private static boolean isAtRisk(FounderLine line) {
        return line.isLastChance() || !handers(line).isEmpty() && handers(line).size() <= FEW;
    }

    private static List<FounderLine.Carrier> handers(FounderLine line) {
        return line.carriers().stream()
                .filter(carrier -> carrier.now() || carrier.later())
                .toList();
    }

    private void tell(FounderLine line, double chanceOfLoss) {
        var animals = handers(line).stream()
                .map(carrier -> name(carrier.row()).orElseThrow())
                .toList();
        Stream.concat(Stream.of(line.founder()), handers(line).stream().map(FounderLine.Carrier::row))
                .filter(row -> row < pool.snapshot().size())
                .forEach(row -> shown.add(pool.snapshot().id(row)));
        var founder = name(line.founder()).orElseThrow();
        chances.add(new LastChance(
                founder,
                line.share(),
                animals,
                line.isLastChance(),
                line.lost(),
                chanceOfLoss,
                words(line, founder, animals, chanceOfLoss)));
    }

    private static String words(FounderLine line, String founder, List<String> animals, double chanceOfLoss) {
        return "%s may still hand on %s genes%s. If this plan is followed, the chance that nothing of them is left at a place of the genome is %s."
                .formatted(
                        animals.equals(List.of(founder)) ? founder + " alone" : "Only " + String.join(", ", animals),
                        animals.equals(List.of(founder)) ? "its" : founder + "'s",
                        line.isLastChance() ? ", and not after this season" : "",
                        PlanViews.figure(chanceOfLoss));
    }

    List<LastChance> chances() {
        return chances;
    }

    /** All animals of the answer. */
    Stream<UUID> shown() {
        return shown.stream();
    }
}
