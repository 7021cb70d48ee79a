package org.demebook.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.demebook.kinship.Pedigree;
import org.jspecify.annotations.Nullable;

/**
 * Looks several seasons ahead: each is planned, its young are born into the pedigree, those whose time is over leave, and so on.
 *
 * <p>Young enter as whole animals, as many as are expected of all litters together; what is left over goes to the next season.
 * A part of an animal could not be planned further: it has no sex, no limits, and no kinship with itself. So what chance does
 * to litters is not in {@link #expected}, which is mostly somewhat too favourable; it is in {@link #drawn}.
 *
 * <p>The same arguments give the same outlook. Cost: a plan for each season. Method and checks: docs/methods/outlook.md.
 */
public final class SeasonsAhead {
    private final Pedigree pedigree;
    private final List<Living> living;
    private final Course course;
    private final Effort effort;

    /**
     * @param pedigree under a convention under which every gene counts
     * @param living the pool of today
     * @param effort of which each season has the moves and the seed, from one start; no bound is computed
     */
    public SeasonsAhead(Pedigree pedigree, List<Living> living, Course course, Effort effort) {
        this.pedigree = pedigree;
        this.living = List.copyOf(living);
        this.course = course;
        this.effort = effort;
    }

    /** The same with unrelated founders who have come today, may breed at once, and stay as long as a young would. */
    public SeasonsAhead withFounders(int females, int males) {
        var builder = pedigree.extended(females + males);
        var all = new ArrayList<>(living);
        for (int i = 0; i < females + males; i++) {
            int row = pedigree.size() + i;
            builder.founder(row);
            all.add(new Living(row, i < females, 0, course.stays()));
        }
        return new SeasonsAhead(builder.build().under(pedigree.convention()), all, course, effort);
    }

    /** The same with animals that breed for the first time, and leave, some seasons later; see {@link Course#later}. */
    public SeasonsAhead withLongerGenerations(int seasons) {
        var longer = living.stream()
                .map(animal -> new Living(
                        animal.row(), animal.female(), animal.breedsIn(), Math.addExact(animal.seasons(), seasons)))
                .toList();
        return new SeasonsAhead(pedigree, longer, course.later(seasons), effort);
    }

    /** With as many young as are expected. */
    public Outlook expected(int seasons) {
        return run(seasons, null, null);
    }

    /** The same after a first season with these litters and no others. */
    public Outlook expected(int seasons, List<Litter> planned) {
        return run(seasons, planned, null);
    }

    /**
     * By lot: litters fail, young die, sexes fall as they fall. Cost: as many times that of {@link #expected}, shared among threads.
     *
     * @param runs how many times all is drawn
     */
    public Spread drawn(int seasons, int runs, long seed) {
        return draw(seasons, null, runs, seed);
    }

    /** The same after a first season with these litters and no others. */
    public Spread drawn(int seasons, List<Litter> planned, int runs, long seed) {
        return draw(seasons, planned, runs, seed);
    }

    private Spread draw(int seasons, @Nullable List<Litter> planned, int runs, long seed) {
        long[] seeds = new SplittableRandom(seed).longs(runs).toArray();
        double[][] diversity = new double[seasons + 1][runs];
        IntStream.range(0, runs).parallel().forEach(draw -> {
            var outlook = run(seasons, planned, new SplittableRandom(seeds[draw]));
            outlook.seasons().forEach(ahead -> diversity[ahead.season()][draw] = ahead.geneDiversity());
        });
        return new Spread(
                course.years(), Arrays.stream(diversity).map(Interval::of).toList());
    }

    private Outlook run(int seasons, @Nullable List<Litter> planned, @Nullable SplittableRandom lots) {
        var pool = new PoolAhead(pedigree, living, course, effort, lots);
        var ahead = new ArrayList<Outlook.Ahead>();
        ahead.add(pool.told(0, 0));
        for (int season = 1; season <= seasons; season++) {
            var litters = season == 1 && planned != null ? planned : pool.plan();
            pool.breed(litters);
            ahead.add(pool.told(season, litters.size()));
        }
        return new Outlook(course.years(), ahead);
    }
}
