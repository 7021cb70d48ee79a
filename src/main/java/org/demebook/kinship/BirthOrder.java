package org.demebook.kinship;

import java.util.Arrays;
import java.util.function.IntUnaryOperator;
import org.demebook.kinship.Births.FounderKinship;
import org.demebook.kinship.Births.HiddenMales;
import org.demebook.kinship.Births.Sparse;

/**
 * Numbers the animals of a builder so that parents stand before young, in an order that depends on births and keys
 * alone: by generation, hidden males first, then by dam, sire and key. Litters stand together, which also keeps the
 * passes in cache.
 */
final class BirthOrder {
    private final PedigreeBuilder told;
    private final Generations generations;
    private final Keys keys;
    private final int rows;

    private final int[] node;
    private int nodes;
    private int room;
    private int[] generationEnd = new int[16];
    private int generationCount;

    /** Hidden males in the order of their nodes. */
    private final int[] maleInOrder;

    private final int[][] candidateNodes;
    private final double[][] candidateShares;
    private int males;

    BirthOrder(PedigreeBuilder told) {
        this.told = told;
        generations = new Generations(told);
        rows = generations.rows;
        keys = new Keys(told, generations);
        node = new int[generations.entities];
        maleInOrder = new int[told.males];
        candidateNodes = new int[told.males][];
        candidateShares = new double[told.males][];
    }

    Births births() {
        number();
        room = PedigreeBuilder.withRoom(Math.max(nodes, rows) + 1); // twins have no node of their own
        return new Births(
                nodes,
                rows,
                kinds(),
                parents(),
                hiddenMales(),
                extra(),
                nodeOfRow(),
                rowOfNode(),
                Arrays.copyOf(generationEnd, generationCount),
                founderKinship(),
                LateBirths.NONE);
    }

    private void number() {
        Arrays.fill(node, -1);
        int[] animals = sorted(inSequence(), row -> generations.of[row]);
        int[] hidden = sorted(malesInUse(), male -> generations.of[male]);
        int animal = 0;
        int male = 0;
        for (int generation = 0; animal < animals.length || male < hidden.length; generation++) {
            int toMale = male;
            while (toMale < hidden.length && generations.of[hidden[toMale]] == generation) {
                toMale++;
            }
            numberMales(Arrays.copyOfRange(hidden, male, toMale));
            male = toMale;
            int toAnimal = animal;
            while (toAnimal < animals.length && generations.of[animals[toAnimal]] == generation) {
                toAnimal++;
            }
            numberAnimals(Arrays.copyOfRange(animals, animal, toAnimal));
            animal = toAnimal;
            endGeneration();
        }
    }

    private void endGeneration() {
        if (generationCount == generationEnd.length) {
            generationEnd = Arrays.copyOf(generationEnd, 2 * generationCount);
        }
        generationEnd[generationCount++] = nodes;
    }

    /** All animals, those of a pedigree that is being extended in its order: what is in order need not be sorted. */
    private int[] inSequence() {
        int[] sequence = new int[rows];
        int count = 0;
        int from = 0;
        if (told.before != null) {
            for (int row : told.before.animalsInOrder()) {
                sequence[count++] = generations.self[row];
            }
            from = told.before.size();
        }
        for (int row = from; row < rows; row++) {
            if (generations.isOneself(row)) {
                sequence[count++] = row;
            }
        }
        return Arrays.copyOf(sequence, count);
    }

    private int[] malesInUse() {
        int[] inUse = new int[told.males];
        int count = 0;
        for (int male = 0; male < told.males; male++) {
            if (keys.isInUse(male)) {
                inUse[count++] = rows + male;
            }
        }
        return Arrays.copyOf(inUse, count);
    }

    private void numberMales(int[] ofGeneration) {
        Integer[] hidden = new Integer[ofGeneration.length];
        for (int i = 0; i < hidden.length; i++) {
            hidden[i] = ofGeneration[i] - rows;
            sortCandidates(hidden[i]);
        }
        Arrays.sort(hidden, this::compareMales);
        for (int male : hidden) {
            maleInOrder[males++] = male;
            node[rows + male] = ++nodes;
        }
    }

    /** Leaves what stands in order already, sorts the rest, and merges. */
    private void numberAnimals(int[] animals) {
        int inOrder = Math.min(1, animals.length);
        while (inOrder < animals.length && compareAnimals(animals[inOrder - 1], animals[inOrder]) < 0) {
            inOrder++;
        }
        int[] rest = sorted(
                sorted(Arrays.copyOfRange(animals, inOrder, animals.length), row -> nodeOf(told.sire[row])),
                row -> nodeOf(told.dam[row]));
        sortLittersByKey(rest);
        int next = 0;
        for (int i = 0; i < inOrder; i++) {
            while (next < rest.length && compareAnimals(rest[next], animals[i]) < 0) {
                node[rest[next++]] = ++nodes;
            }
            node[animals[i]] = ++nodes;
        }
        while (next < rest.length) {
            node[rest[next++]] = ++nodes;
        }
    }

    private int compareAnimals(int row, int other) {
        int byDam = Integer.compare(nodeOf(told.dam[row]), nodeOf(told.dam[other]));
        if (byDam != 0) {
            return byDam;
        }
        int bySire = Integer.compare(nodeOf(told.sire[row]), nodeOf(told.sire[other]));
        return bySire != 0 ? bySire : keys.compareAnimals(row, other);
    }

    private void sortLittersByKey(int[] animals) {
        int from = 0;
        while (from < animals.length) {
            int to = from + 1;
            while (to < animals.length && haveSameParents(animals[from], animals[to])) {
                to++;
            }
            Integer[] litter = new Integer[to - from];
            for (int i = from; i < to; i++) {
                litter[i - from] = animals[i];
            }
            Arrays.sort(litter, keys::compareAnimals);
            for (int i = from; i < to; i++) {
                animals[i] = litter[i - from];
            }
            from = to;
        }
    }

    private boolean haveSameParents(int row, int other) {
        return nodeOf(told.dam[row]) == nodeOf(told.dam[other]) && nodeOf(told.sire[row]) == nodeOf(told.sire[other]);
    }

    /** Sorts by an int key and keeps the order of equals. */
    static int[] sorted(int[] items, IntUnaryOperator key) {
        long[] packed = new long[items.length];
        for (int i = 0; i < items.length; i++) {
            packed[i] = (long) key.applyAsInt(items[i]) << 32 | i;
        }
        Arrays.sort(packed);
        int[] result = new int[items.length];
        for (int i = 0; i < items.length; i++) {
            result[i] = items[(int) packed[i]];
        }
        return result;
    }

    private int nodeOf(int parent) {
        int entity = generations.entityOf(parent);
        return entity < 0 ? Births.NONE : node[entity];
    }

    /** Replaces the candidates of a male by their nodes, ascending, each once and none without probability. */
    private void sortCandidates(int male) {
        int[] candidates = told.candidates[male];
        double[] shares = told.shares[male];
        Integer[] order = new Integer[candidates.length];
        for (int i = 0; i < order.length; i++) {
            order[i] = i;
        }
        Arrays.sort(order, (a, b) -> {
            int byNode = Integer.compare(nodeOf(candidates[a]), nodeOf(candidates[b]));
            return byNode != 0 ? byNode : Double.compare(shares[a], shares[b]);
        });
        int[] sortedNodes = new int[candidates.length];
        double[] sortedShares = new double[candidates.length];
        int length = 0;
        for (int i : order) {
            if (shares[i] == 0) {
                continue;
            }
            int candidate = nodeOf(candidates[i]);
            if (length > 0 && sortedNodes[length - 1] == candidate) {
                sortedShares[length - 1] += shares[i];
            } else {
                sortedNodes[length] = candidate;
                sortedShares[length++] = shares[i];
            }
        }
        candidateNodes[male] = Arrays.copyOf(sortedNodes, length);
        candidateShares[male] = Arrays.copyOf(sortedShares, length);
    }

    private int compareMales(int male, int other) {
        int byYoung = keys.compareMales(male, other);
        if (byYoung != 0) {
            return byYoung;
        }
        int byCandidates = Arrays.compare(candidateNodes[male], candidateNodes[other]);
        return byCandidates != 0 ? byCandidates : Arrays.compare(candidateShares[male], candidateShares[other]);
    }

    private byte[] kinds() {
        byte[] kind = new byte[room];
        Arrays.fill(kind, 1, nodes + 1, Births.HIDDEN);
        for (int row = 0; row < rows; row++) {
            if (generations.isOneself(row)) {
                kind[node[row]] = told.kind[row];
            }
        }
        return kind;
    }

    private int[] parents() {
        int[] parents = new int[2 * room];
        for (int row = 0; row < rows; row++) {
            if (generations.isOneself(row)) {
                parents[2 * node[row]] = nodeOf(told.sire[row]);
                parents[2 * node[row] + 1] = nodeOf(told.dam[row]);
            }
        }
        return parents;
    }

    private HiddenMales hiddenMales() {
        int[] hidden = new int[males];
        int[] start = new int[males + 1];
        double[] remainder = new double[males];
        for (int i = 0; i < males; i++) {
            int male = maleInOrder[i];
            hidden[i] = node[rows + male];
            start[i + 1] = start[i] + candidateNodes[male].length;
            remainder[i] = remainder(candidateShares[male]);
        }
        int[] candidate = new int[start[males]];
        double[] share = new double[start[males]];
        for (int i = 0; i < males; i++) {
            int male = maleInOrder[i];
            int length = candidateNodes[male].length;
            System.arraycopy(candidateNodes[male], 0, candidate, start[i], length);
            System.arraycopy(candidateShares[male], 0, share, start[i], length);
        }
        return new HiddenMales(hidden, start, candidate, share, remainder);
    }

    private static double remainder(double[] shares) {
        double sum = 0;
        for (double share : shares) {
            sum += share;
        }
        return 1 - sum > 1e-9 ? 1 - sum : 0; // thirds that add up to almost one leave nothing
    }

    private Sparse extra() {
        double[] byNode = new double[nodes + 1];
        for (int row = 0; row < rows; row++) {
            if (generations.isOneself(row)) {
                byNode[node[row]] = told.extra[row];
            }
        }
        int[] at = new int[nodes];
        double[] value = new double[nodes];
        int length = 0;
        for (int i = 1; i <= nodes; i++) {
            if (byNode[i] != 0) {
                at[length] = i;
                value[length++] = byNode[i];
            }
        }
        return new Sparse(Arrays.copyOf(at, length), Arrays.copyOf(value, length));
    }

    private int[] nodeOfRow() {
        int[] result = new int[room];
        for (int row = 0; row < rows; row++) {
            result[row] = node[generations.self[row]];
        }
        return result;
    }

    private int[] rowOfNode() {
        int[] result = new int[room];
        Arrays.fill(result, -1);
        for (int row = 0; row < rows; row++) {
            if (generations.isOneself(row)) {
                result[node[row]] = keys.smallestTwin(row);
            }
        }
        return result;
    }

    private FounderKinship founderKinship() {
        int pairs = told.dnaPairs;
        Integer[] order = new Integer[pairs];
        int[] a = new int[pairs];
        int[] b = new int[pairs];
        for (int i = 0; i < pairs; i++) {
            order[i] = i;
            a[i] = Math.min(nodeOf(told.dnaA[i]), nodeOf(told.dnaB[i]));
            b[i] = Math.max(nodeOf(told.dnaA[i]), nodeOf(told.dnaB[i]));
        }
        Arrays.sort(order, (x, y) -> a[x] != a[y] ? Integer.compare(a[x], a[y]) : Integer.compare(b[x], b[y]));
        int[] sortedA = new int[pairs];
        int[] sortedB = new int[pairs];
        double[] kinship = new double[pairs];
        for (int i = 0; i < pairs; i++) {
            sortedA[i] = a[order[i]];
            sortedB[i] = b[order[i]];
            kinship[i] = told.dnaKinship[order[i]];
            if (i > 0 && sortedA[i] == sortedA[i - 1] && sortedB[i] == sortedB[i - 1]) {
                throw new IllegalStateException("the kinship of a pair of founders was told twice");
            }
        }
        return new FounderKinship(sortedA, sortedB, kinship);
    }
}
