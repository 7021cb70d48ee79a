package org.demebook.season;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.demebook.kinship.Pedigree;

/** An invented herd of three generations, from a seed, and seasons of it. */
final class Herd {
    final Pedigree pedigree;
    final int[] females;
    final int[] males;
    final int[] pool;
    final SplittableRandom random;

    /** @param others animals of the pool that are no candidates */
    Herd(long seed, int founders, int females, int males, int others) {
        random = new SplittableRandom(seed);
        int parents = founders + 2 * founders;
        int all = parents + females + males + others;
        var builder = Pedigree.builder(all);
        for (int animal = 0; animal < all; animal++) {
            if (animal < founders) {
                builder.founder(animal);
            } else {
                // even numbers are males; a few are used often
                int from = animal < parents ? 0 : founders / 2;
                int upTo = animal < parents ? founders : parents;
                builder.young(animal, often(from, upTo, 0), often(from, upTo, 1));
            }
        }
        pedigree = builder.build();
        this.females = IntStream.range(parents, parents + females).toArray();
        this.males =
                IntStream.range(parents + females, parents + females + males).toArray();
        pool = IntStream.range(parents, all).toArray();
    }

    private int often(int from, int upTo, int sex) {
        int one = Math.min(random.nextInt(from, upTo), random.nextInt(from, upTo));
        int fitting = one % 2 == sex ? one : one + 1;
        return fitting < upTo ? fitting : fitting - 2;
    }

    SeasonBuilder season() {
        return Season.of(pedigree, pedigree.pool(pool), females, males);
    }

    /** Ten collections, males with two litters at most, inbreeding of the young up to 1/8, two young of each litter. */
    static SeasonBuilder inTenCollections(int seed, int founders, int females, int males, int litters) {
        var herd = new Herd(seed, founders, females, males, 0);
        var season = herd.season().litters(litters).inbreedingAtMost(.125).collections(10);
        for (int female = 0; female < females; female++) {
            season.femaleLivesIn(female, female % 10).young(female, 2);
        }
        for (int male = 0; male < males; male++) {
            season.maleLivesIn(male, male % 10).littersOfMale(male, 2);
        }
        for (int at = 0; at < 10; at++) {
            season.littersOfCollection(at, litters / 8);
        }
        return season;
    }

    /** A season with limits of every kind, drawn at random. */
    Season limited(int collections, int litters, boolean exactly) {
        var season = season().collections(collections);
        for (int female = 0; female < females.length; female++) {
            season.femaleLivesIn(female, random.nextInt(collections)).young(female, .5 * (1 + random.nextInt(8)));
            for (int male = 0; male < males.length; male++) {
                if (random.nextInt(4) == 0) {
                    season.refuse(female, male);
                }
            }
        }
        for (int male = 0; male < males.length; male++) {
            season.maleLivesIn(male, random.nextInt(collections)).littersOfMale(male, 1 + random.nextInt(2));
        }
        for (int at = 0; at < collections; at++) {
            if (random.nextInt(2) == 0) {
                season.littersOfCollection(at, 1 + random.nextInt(2));
            }
            if (random.nextInt(2) == 0) {
                season.travellersOfCollection(at, random.nextInt(3));
            }
        }
        return (exactly ? season.litters(litters) : season.littersAtMost(litters)).build();
    }

    /** Every plan of a small season, by the definition of each constraint. */
    static List<int[]> everyPlan(Season season) {
        var plans = new ArrayList<int[]>();
        everyPlan(season, new int[season.females()], 0, plans);
        return plans;
    }

    private static void everyPlan(Season season, int[] sires, int female, List<int[]> plans) {
        if (female == sires.length) {
            if (keepsAll(season, sires)) {
                plans.add(sires.clone());
            }
            return;
        }
        for (int male = -1; male < season.males(); male++) {
            sires[female] = male;
            everyPlan(season, sires, female + 1, plans);
        }
    }

    /** The constraints once more, counted from scratch. */
    static boolean keepsAll(Season season, int[] sires) {
        int litters = 0;
        int[] ofMale = new int[season.males];
        int[] ofCollection = new int[season.littersOfCollection.length];
        var travellers = new BitSet();
        for (int female = 0; female < sires.length; female++) {
            int male = sires[female];
            if (male >= 0) {
                if (!season.allowed[female].get(male)) {
                    return false;
                }
                litters++;
                ofMale[male]++;
                ofCollection[season.collection[female]]++;
                if (season.collection[female] != season.collection[season.females + male]) {
                    travellers.set(male);
                }
            }
        }
        for (int male = 0; male < ofMale.length; male++) {
            if (ofMale[male] > season.littersOfMale[male]) {
                return false;
            }
        }
        for (int at = 0; at < ofCollection.length; at++) {
            int home = at;
            long gone = travellers.stream()
                    .filter(male -> season.collection[season.females + male] == home)
                    .count();
            if (ofCollection[at] > season.littersOfCollection[at] || gone > season.travellersOfCollection[at]) {
                return false;
            }
        }
        return litters >= season.least
                && litters <= season.most
                && season.locked.stream().allMatch(pair -> sires[pair.female()] == pair.male());
    }

    /** Mean kinship after the plan, by the definition: every young beside every other. */
    static double meanKinship(Season season, int[] sires) {
        double[][] kinship = season.genes.kinship();
        double animals = season.genes.size();
        double sum = animals * animals * season.genes.meanKinship();
        double young = 0;
        for (int female = 0; female < sires.length; female++) {
            if (sires[female] < 0) {
                continue;
            }
            int male = season.females + sires[female];
            double size = season.young[female];
            young += size;
            sum += size
                    * animals
                    * (season.genes.toPool()[female] + season.genes.toPool()[male]);
            sum += size * ((1 + kinship[female][male]) / 2 - siblings(kinship, female, male, female, male));
            for (int other = 0; other < sires.length; other++) {
                if (sires[other] >= 0) {
                    sum += size
                            * season.young[other]
                            * siblings(kinship, female, male, other, season.females + sires[other]);
                }
            }
        }
        return sum / ((animals + young) * (animals + young));
    }

    private static double siblings(double[][] kinship, int dam, int sire, int otherDam, int otherSire) {
        return (kinship[dam][otherDam] + kinship[dam][otherSire] + kinship[sire][otherDam] + kinship[sire][otherSire])
                / 4;
    }
}
