package org.demebook.season;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.demebook.kinship.Pedigree;

/**
 * A population from eight founders, bred in one {@link Way}. Animals breed from two seasons of age, females every other
 * season; a litter succeeds four times in five, three young of it stay, of either sex; the oldest make room.
 */
final class Generations {
    private static final int FOUNDERS = 8;
    private static final int MATURE = 2;
    private static final int KEPT = 3;
    private static final double SUCCESS = .8;
    /** None lives so long: the oldest make room. */
    private static final int FOR_EVER = 1_000;

    private static final double[] INBREEDING = {.125, .25, 1};

    private record Animal(int row, int sire, int dam, boolean female, int bornIn) {}

    private final List<Animal> all = new ArrayList<>();
    private final int[] restsIn = new int[20_000];
    private final int size;
    private final long seed;
    private List<Animal> living;
    private int season;

    Generations(int size, long seed) {
        this.size = size;
        this.seed = seed;
        for (int row = 0; row < FOUNDERS; row++) {
            all.add(new Animal(row, -1, -1, row % 2 == 0, -MATURE));
        }
        living = youngestFirst(all);
        while (living.size() < size) {
            breed(Way.RANDOM, size);
        }
    }

    /** A season with a tenth as many litters as animals. */
    void breed(Way way) {
        breed(way, Math.max(2, size / 10));
    }

    private void breed(Way way, int litters) {
        season++;
        // chance is the same for every way, its choices aside
        var random = new SplittableRandom(seed * 1_000 + season);
        var females = mature(true);
        var males = mature(false);
        var planned = possible(way.knowledge, females, males, Math.min(litters, females.size()));
        int[] sires = way.choose(planned, random.split());
        var young = new ArrayList<Animal>();
        for (int female = 0; female < sires.length; female++) {
            if (sires[female] != Season.NONE) {
                var dam = females.get(female);
                restsIn[dam.row()] = season + 1;
                if (random.nextDouble() < SUCCESS) {
                    bear(dam, males.get(sires[female]), young, random);
                }
            }
        }
        all.addAll(young);
        living.addAll(young);
        living = youngestFirst(living);
        living = new ArrayList<>(living.subList(0, Math.min(size, living.size())));
    }

    private static List<Animal> youngestFirst(List<Animal> animals) {
        var sorted = new ArrayList<>(animals);
        sorted.sort(Comparator.comparingInt(Animal::row).reversed());
        return sorted;
    }

    private void bear(Animal dam, Animal sire, List<Animal> young, SplittableRandom random) {
        for (int i = 0; i < KEPT; i++) {
            young.add(new Animal(all.size() + young.size(), sire.row(), dam.row(), random.nextBoolean(), season));
        }
    }

    private List<Animal> mature(boolean female) {
        return living.stream()
                .filter(animal -> animal.female() == female
                        && season - animal.bornIn() >= MATURE
                        && !(female && restsIn[animal.row()] == season))
                .sorted(Comparator.comparingInt(Animal::row))
                .toList();
    }

    /** So many litters, fewer if that cannot be, by males with two litters at most and with the least inbreeding that leaves a way. */
    private Season possible(Way.Knowledge knowledge, List<Animal> females, List<Animal> males, int litters) {
        for (int wanted = litters; ; wanted--) {
            for (double inbreeding : INBREEDING) {
                var pedigree = pedigree();
                var builder = Season.of(
                                pedigree, rows(living), weights(knowledge, wanted), rows(females), rows(males))
                        .litters(wanted)
                        .inbreedingAtMost(inbreeding);
                for (int female = 0; female < females.size(); female++) {
                    builder.young(female, SUCCESS * KEPT);
                }
                for (int male = 0; male < males.size(); male++) {
                    builder.littersOfMale(male, 2);
                }
                var planned = builder.build();
                if (Plans.isPossible(planned)) {
                    return planned;
                }
            }
        }
    }

    /** By place among the living, youngest first. The oldest make room for the young that are expected of each season. */
    private double[] weights(Way.Knowledge knowledge, int litters) {
        double expected = Math.max(1, litters * SUCCESS * KEPT);
        double[] weights = new double[living.size()];
        for (int place = 0; place < weights.length; place++) {
            weights[place] = switch (knowledge) {
                case THE_LIVING -> 1;
                case WHO_STAYS -> place < Math.max(1, size - Math.round(expected)) ? 1 : 0;
                case HOW_LONG -> StayWeight.of(Math.ceil((size - place) / expected) - 1, size / expected);
            };
        }
        return weights;
    }

    private Pedigree pedigree() {
        var builder = Pedigree.builder(all.size());
        for (var animal : all) {
            if (animal.sire() < 0) {
                builder.founder(animal.row());
            } else {
                builder.young(animal.row(), animal.sire(), animal.dam());
            }
        }
        return builder.build();
    }

    /** What is to be expected, by the same rules. */
    SeasonsAhead ahead() {
        var animals = living.stream().map(this::ahead).toList();
        var chance = new LitterChance(SUCCESS, KEPT, 1);
        var course = new Course(1, Math.max(2, size / 10), chance, MATURE, FOR_EVER, 1, 2, INBREEDING[0], size);
        return new SeasonsAhead(pedigree(), animals, course, new Effort(3, 1, 20_000, 1));
    }

    private Living ahead(Animal animal) {
        int age = season - animal.bornIn();
        int rests = animal.female() && restsIn[animal.row()] == season + 1 ? 1 : 0;
        return new Living(animal.row(), animal.female(), Math.max(rests, MATURE - 1 - age), FOR_EVER - age);
    }

    double geneDiversity() {
        return pedigree().pool(rows(living)).geneDiversity();
    }

    double meanInbreeding() {
        var pedigree = pedigree();
        return IntStream.of(rows(living))
                .mapToDouble(pedigree::inbreeding)
                .average()
                .orElseThrow();
    }

    private static int[] rows(List<Animal> animals) {
        return animals.stream().mapToInt(Animal::row).toArray();
    }
}
