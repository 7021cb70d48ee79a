package org.demebook.season;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.demebook.kinship.Pedigree;
import org.jspecify.annotations.Nullable;

/** A pool as it goes from season to season. */
final class PoolAhead {
    /** Weighs those of a pool in which nobody stays, so that it is no empty one. */
    static final double NEXT_TO_NOTHING = 1e-9;

    private final Course course;
    private final Effort effort;
    private final @Nullable SplittableRandom lots;
    private Pedigree births;
    /** Youngest first. */
    private List<Living> pool;

    private double leftOver;
    private boolean nextIsFemale = true;

    /** @param lots by which young are born; null for as many as are expected */
    PoolAhead(Pedigree births, List<Living> pool, Course course, Effort effort, @Nullable SplittableRandom lots) {
        this.births = births;
        this.course = course;
        this.effort = effort;
        this.lots = lots;
        this.pool = youngestFirst(pool);
    }

    private static List<Living> youngestFirst(List<Living> animals) {
        return animals.stream()
                .sorted(Comparator.comparingInt(Living::seasons).reversed())
                .toList();
    }

    Outlook.Ahead told(int season, int litters) {
        if (pool.isEmpty()) {
            return new Outlook.Ahead(season, 0, litters, 0, 0);
        }
        int[] rows = rows(pool);
        double inbreeding = IntStream.of(rows).mapToDouble(births::inbreeding).sum() / rows.length;
        return new Outlook.Ahead(season, rows.length, litters, births.pool(rows).geneDiversity(), inbreeding);
    }

    /** As many litters as wanted, or as can be; as little inbreeding as leaves them. */
    List<Litter> plan() {
        var females = breeders(true);
        var males = breeders(false);
        for (int wanted = males.isEmpty() ? 0 : Math.min(course.litters(), females.size()); wanted > 0; wanted--) {
            for (double inbreeding = course.inbreedingAtMost(); ; inbreeding *= 2) {
                var season = season(females, males, wanted, inbreeding);
                if (Plans.isPossible(season)) {
                    return litters(season, females, males);
                }
                if (inbreeding >= 1) {
                    break;
                }
            }
        }
        return List.of();
    }

    private List<Living> breeders(boolean female) {
        return pool.stream()
                .filter(animal -> animal.female() == female && animal.mayBreed())
                .sorted(Comparator.comparingInt(Living::row))
                .toList();
    }

    private Season season(List<Living> females, List<Living> males, int wanted, double inbreeding) {
        var builder = Season.of(births, rows(pool), weights(), rows(females), rows(males))
                .litters(wanted)
                .inbreedingAtMost(inbreeding);
        for (int female = 0; female < females.size(); female++) {
            builder.young(female, course.chance().expected());
        }
        for (int male = 0; male < males.size(); male++) {
            builder.littersOfMale(male, course.littersOfMale());
        }
        return builder.build();
    }

    /** By place in the pool: how long it stays until its time is over or the young have taken its place. */
    private double[] weights() {
        double expected = Math.max(1, course.expected());
        double ofYoung = Math.min(course.stays(), Math.max(1, course.places() / expected));
        double[] weights = new double[pool.size()];
        for (int place = 0; place < weights.length; place++) {
            double room = Math.ceil((course.places() - (double) place) / expected) - 1;
            double left = Math.min(pool.get(place).seasons() - 1.0, Math.max(0, room));
            weights[place] = Math.max(NEXT_TO_NOTHING, StayWeight.of(left, ofYoung));
        }
        return weights;
    }

    /** A plan made litter by litter, bettered by a short search near it, then the least inbred at the same numbers. */
    private List<Litter> litters(Season season, List<Living> females, List<Living> males) {
        int[] start = Plans.near(season, Plans.litterByLitter(season), (female, male) -> 0)
                .orElseThrow();
        var search = new Search(season, start, SeasonPlanner.TIE, 0, effort.seed(), Watch.NOBODY);
        int[] sires = Plans.leastInbred(season, search.run(effort.moves(), SeasonPlanner.NEAR))
                .sires();
        return IntStream.range(0, sires.length)
                .filter(female -> sires[female] != Season.NONE)
                .mapToObj(female -> new Litter(
                        females.get(female).row(), males.get(sires[female]).row(), course.chance()))
                .toList();
    }

    void breed(List<Litter> litters) {
        int[] young = young(litters);
        int all = IntStream.of(young).sum();
        var then = new ArrayList<Living>();
        var builder = births.extended(all);
        int row = births.size();
        for (int i = 0; i < young.length; i++) {
            for (int one = 0; one < young[i]; one++) {
                builder.young(row, litters.get(i).sire(), litters.get(i).dam());
                then.add(new Living(row++, sex(), course.matures() - 1, course.stays()));
            }
        }
        if (all > 0) {
            births = builder.build().under(births.convention());
        }
        var dams = litters.stream().map(Litter::dam).toList();
        for (var animal : pool) {
            if (animal.stays()) {
                then.add(animal.next(dams.contains(animal.row()) ? course.rests() : 0));
            }
        }
        pool = youngestFirst(then).subList(0, Math.min(then.size(), course.places()));
    }

    /** By litter: drawn, or whole parts of what is expected, the largest fractions made up to one. */
    private int[] young(List<Litter> litters) {
        if (lots != null) {
            return litters.stream()
                    .mapToInt(litter -> litter.chance().draw(lots))
                    .toArray();
        }
        double[] expected = litters.stream()
                .mapToDouble(litter -> litter.chance().expected())
                .toArray();
        int[] young = new int[expected.length];
        double due = leftOver;
        for (int i = 0; i < expected.length; i++) {
            young[i] = (int) expected[i];
            due += expected[i] - young[i];
        }
        // up to rounding of sums: five times .8 are four
        int whole = (int) Math.floor(due + 1e-9);
        leftOver = due - whole;
        IntStream.range(0, expected.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> young[i] - expected[i]))
                .limit(whole)
                .forEach(i -> young[i]++);
        return young;
    }

    private boolean sex() {
        if (lots != null) {
            return lots.nextBoolean();
        }
        nextIsFemale = !nextIsFemale;
        return !nextIsFemale;
    }

    private static int[] rows(List<Living> animals) {
        return animals.stream().mapToInt(Living::row).toArray();
    }
}
