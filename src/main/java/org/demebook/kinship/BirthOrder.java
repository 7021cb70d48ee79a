package org.demebook.kinship;

import java.util.Arrays;
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
    private final int rows;
    private final int entities;

    private int[] byKey = new int[0];
    /** By entity, its place in the order of keys; for a hidden male that of his first young. */
    private final int[] rank;

    private final int[] node;
    private int nodes;

    /** Hidden males in the order of their nodes. */
    private final int[] maleInOrder;

    private final int[][] candidateNodes;
    private final double[][] candidateShares;
    private int males;

    BirthOrder(PedigreeBuilder told) {
        this.told = told;
        generations = new Generations(told);
        rows = generations.rows;
        entities = generations.entities;
        rank = new int[entities];
        node = new int[entities];
        maleInOrder = new int[told.males];
        candidateNodes = new int[told.males][];
        candidateShares = new double[told.males][];
    }

    Births births() {
        sortByKey();
        rank();
        number();
        return new Births(
                kinds(),
                parents(told.sire),
                parents(told.dam),
                hiddenMales(),
                extra(),
                nodeOfRow(),
                rowOfNode(),
                founderKinship());
    }

    private void sortByKey() {
        int[] order = new int[rows];
        for (int row = 0; row < rows; row++) {
            order[row] = row;
        }
        if (told.keyed) {
            order = sorted(order, row -> (int) told.keyLow[row]);
            order = sorted(order, row -> (int) (told.keyLow[row] >>> 32));
            order = sorted(order, row -> (int) told.keyHigh[row]);
            order = sorted(order, row -> (int) (told.keyHigh[row] >>> 32));
        }
        byKey = order;
        for (int place = 1; place < rows; place++) {
            requireDistinctKeys(byKey[place - 1], byKey[place]);
        }
    }

    private void requireDistinctKeys(int row, int next) {
        if (told.keyLow[row] == told.keyLow[next] && told.keyHigh[row] == told.keyHigh[next]) {
            throw new IllegalStateException("rows " + row + " and " + next + " have the same key");
        }
    }

    private void rank() {
        Arrays.fill(rank, Integer.MAX_VALUE);
        for (int place = 0; place < rows; place++) {
            int animal = generations.self[byKey[place]];
            rank[animal] = Math.min(rank[animal], place);
        }
        for (int row = 0; row < rows; row++) {
            if (generations.isOneself(row)) {
                rankMales(row);
            }
        }
        // A male's candidates are told before him, so one pass backwards reaches the males among them.
        for (int male = entities - 1; male >= rows; male--) {
            rankMales(male);
        }
    }

    private void rankMales(int entity) {
        for (int p = 0; p < generations.parents(entity); p++) {
            int parent = generations.parent(entity, p);
            if (parent >= rows) {
                rank[parent] = Math.min(rank[parent], rank[entity]);
            }
        }
    }

    private interface IntKey {
        int of(int item);
    }

    /** Sorts by an int key and keeps the order of equals. */
    private static int[] sorted(int[] items, IntKey key) {
        long[] packed = new long[items.length];
        for (int i = 0; i < items.length; i++) {
            packed[i] = (long) key.of(items[i]) << 32 | i;
        }
        Arrays.sort(packed);
        int[] result = new int[items.length];
        for (int i = 0; i < items.length; i++) {
            result[i] = items[(int) packed[i]];
        }
        return result;
    }

    private void number() {
        int[] live = new int[entities];
        int count = 0;
        for (int entity = 0; entity < entities; entity++) {
            if (generations.isOneself(entity) && rank[entity] < Integer.MAX_VALUE) {
                live[count++] = entity;
            }
        }
        int[] byGeneration =
                sorted(sorted(Arrays.copyOf(live, count), entity -> rank[entity]), entity -> generations.of[entity]);
        Arrays.fill(node, -1);
        int from = 0;
        while (from < count) {
            int to = from;
            while (to < count && generations.of[byGeneration[to]] == generations.of[byGeneration[from]]) {
                to++;
            }
            numberOneGeneration(Arrays.copyOfRange(byGeneration, from, to));
            from = to;
        }
    }

    private void numberOneGeneration(int[] byRank) {
        int[] animals = new int[byRank.length];
        Integer[] hidden = new Integer[byRank.length];
        int animalCount = 0;
        int maleCount = 0;
        for (int entity : byRank) {
            if (entity < rows) {
                animals[animalCount++] = entity;
            } else {
                sortCandidates(entity - rows);
                hidden[maleCount++] = entity;
            }
        }
        Arrays.sort(hidden, 0, maleCount, this::compareMales);
        for (int i = 0; i < maleCount; i++) {
            maleInOrder[males++] = hidden[i] - rows;
            node[hidden[i]] = nodes++;
        }
        int[] bySire = sorted(Arrays.copyOf(animals, animalCount), row -> nodeOf(told.sire[row]));
        for (int row : sorted(bySire, row -> nodeOf(told.dam[row]))) {
            node[row] = nodes++;
        }
    }

    private int nodeOf(int parent) {
        int entity = generations.entityOf(parent);
        return entity < 0 ? -1 : node[entity];
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

    private int compareMales(int a, int b) {
        int byRank = Integer.compare(rank[a], rank[b]);
        if (byRank != 0) {
            return byRank;
        }
        int byCandidates = Arrays.compare(candidateNodes[a - rows], candidateNodes[b - rows]);
        return byCandidates != 0 ? byCandidates : Arrays.compare(candidateShares[a - rows], candidateShares[b - rows]);
    }

    private byte[] kinds() {
        byte[] kind = new byte[nodes];
        Arrays.fill(kind, Births.HIDDEN);
        for (int row = 0; row < rows; row++) {
            if (generations.isOneself(row)) {
                kind[node[row]] = told.kind[row];
            }
        }
        return kind;
    }

    private int[] parents(int[] parentOfRow) {
        int[] parent = new int[nodes];
        Arrays.fill(parent, nodes);
        for (int row = 0; row < rows; row++) {
            if (generations.isOneself(row) && parentOfRow[row] != Pedigree.UNKNOWN) {
                parent[node[row]] = nodeOf(parentOfRow[row]);
            }
        }
        return parent;
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
        double[] byNode = new double[nodes];
        for (int row = 0; row < rows; row++) {
            if (generations.isOneself(row)) {
                byNode[node[row]] = told.extra[row];
            }
        }
        int[] at = new int[nodes];
        double[] value = new double[nodes];
        int length = 0;
        for (int i = 0; i < nodes; i++) {
            if (byNode[i] != 0) {
                at[length] = i;
                value[length++] = byNode[i];
            }
        }
        return new Sparse(Arrays.copyOf(at, length), Arrays.copyOf(value, length));
    }

    private int[] nodeOfRow() {
        int[] result = new int[rows];
        for (int row = 0; row < rows; row++) {
            result[row] = node[generations.self[row]];
        }
        return result;
    }

    private int[] rowOfNode() {
        int[] result = new int[nodes];
        Arrays.fill(result, -1);
        for (int place = rows - 1; place >= 0; place--) {
            result[node[generations.self[byKey[place]]]] = byKey[place];
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
