package org.demebook.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.SplittableRandom;

/** Ways to choose the pairs of a season; each keeps its constraints. */
enum Way {
    PLAN("plan", Knowledge.HOW_LONG) {
        @Override
        int[] choose(Season season, SplittableRandom random) {
            return planned(season, random);
        }
    },
    PLAN_FOR_ONE_SEASON("plan for one season", Knowledge.WHO_STAYS) {
        @Override
        int[] choose(Season season, SplittableRandom random) {
            return planned(season, random);
        }
    },
    /** The female of lowest mean kinship with the male of lowest; after each choice all are ranked anew. */
    LIST("list by mean kinship", Knowledge.THE_LIVING) {
        @Override
        int[] choose(Season season, SplittableRandom random) {
            return ranked(season);
        }
    },
    LIST_OF_THOSE_WHO_STAY("list, of those who stay", Knowledge.WHO_STAYS) {
        @Override
        int[] choose(Season season, SplittableRandom random) {
            return ranked(season);
        }
    },
    LIST_BY_HOW_LONG("list, weighed like the plan", Knowledge.HOW_LONG) {
        @Override
        int[] choose(Season season, SplittableRandom random) {
            return ranked(season);
        }
    },
    /** As many pairs with the least inbred young, by a flow. */
    LEAST_INBRED("least inbred young", Knowledge.WHO_STAYS) {
        @Override
        int[] choose(Season season, SplittableRandom random) {
            return new Network(season)
                    .cheapest(
                            (female, male) -> season.inbreeding(new Pair(female, male)) + 1e-6 * random.nextDouble(),
                            40)
                    .sires();
        }
    },
    RANDOM("at random", Knowledge.WHO_STAYS) {
        @Override
        int[] choose(Season season, SplittableRandom random) {
            return new Network(season)
                    .cheapest((female, male) -> random.nextDouble(), 40)
                    .sires();
        }
    };

    /** What a way knows of the pool's animals. */
    enum Knowledge {
        THE_LIVING,
        WHO_STAYS,
        HOW_LONG
    }

    final String words;
    final Knowledge knowledge;

    Way(String words, Knowledge knowledge) {
        this.words = words;
        this.knowledge = knowledge;
    }

    /** By female, her litter's sire or {@link Season#NONE}. */
    abstract int[] choose(Season season, SplittableRandom random);

    private static int[] planned(Season season, SplittableRandom random) {
        var effort = new Effort(3, 1, 30_000, random.nextLong());
        return ((SeasonPlan) new SeasonPlanner(season, effort, Watch.NOBODY).plan()).sires(season);
    }

    private static int[] ranked(Season season) {
        int[] sires = none(season);
        for (int litter = 0; litter < season.least; litter++) {
            double[] u = Draft.halves(season, sires);
            double[] related = season.genes.related(u);
            double[] rank = new double[season.genes.candidates()];
            Arrays.setAll(rank, animal -> season.genes.size() * season.genes.toPool()[animal] + related[animal]);
            take(season, sires, (female, male) -> rank[female] * 1e3 + rank[season.females + male]);
        }
        return sires;
    }

    private static int[] none(Season season) {
        int[] sires = new int[season.females];
        Arrays.fill(sires, Season.NONE);
        return sires;
    }

    /** The cheapest pair with which the wanted number of litters can still be reached. */
    private static void take(Season season, int[] sires, Network.Cost cost) {
        var refused = new HashSet<Pair>();
        while (true) {
            Pair best = null;
            for (int female = 0; female < season.females; female++) {
                for (int male = 0; male < season.males; male++) {
                    var pair = new Pair(female, male);
                    if (sires[female] == Season.NONE
                            && season.isAllowed(pair)
                            && !refused.contains(pair)
                            && (best == null || cost.of(female, male) < cost.of(best.female(), best.male()))) {
                        best = pair;
                    }
                }
            }
            sires[best.female()] = best.male();
            if (canGoOn(season, sires)) {
                return;
            }
            sires[best.female()] = Season.NONE;
            refused.add(best);
        }
    }

    private static boolean canGoOn(Season season, int[] sires) {
        var settled = new ArrayList<Pair>();
        for (int female = 0; female < sires.length; female++) {
            if (sires[female] != Season.NONE) {
                settled.add(new Pair(female, sires[female]));
            }
        }
        return new Network(new Season(
                        season.genes,
                        season.females,
                        season.collection,
                        new Season.Wishes(
                                season.young,
                                season.allowed,
                                season.littersOfMale,
                                season.littersOfCollection,
                                season.travellersOfCollection,
                                season.least,
                                season.most,
                                settled)))
                .isPossible();
    }
}
