package org.demebook.kinship;

import java.util.Arrays;
import org.demebook.kinship.Births.FounderKinship;
import org.demebook.kinship.Births.Sparse;

/**
 * The nodes that have young, as a pedigree of their own. Every ancestor is among them, and where litters are large they
 * are a quarter of all: what goes over many ancestors touches a quarter of the memory.
 *
 * <p>Founders related by DNA and animals with a twin are taken in too. So a node outside is one animal that is related to
 * others through its parents alone, and through the {@link #parentsOf pair} it has here.
 *
 * <p>Late births make breeders of their parents. These stand last, as late births of this pedigree, and arrays are shared
 * with the one before. What it finds there of nodes beyond its own is not yet true for it.
 *
 * @param births without rows; its late births have no generation
 * @param whole by breeder its node in the whole, in order but for the late ones
 * @param place by node of the whole; read it by {@link #of}
 */
record Breeders(Births births, int[] whole, int[] place) {

    /** @param births without late ones */
    static Breeders of(Births births) {
        boolean[] keep = new boolean[births.nodes() + 1];
        for (int node = 1; node <= births.nodes(); node++) {
            keep[births.sire(node)] = true;
            keep[births.dam(node)] = true;
        }
        var related = births.founderKinship();
        for (int[] some : new int[][] {births.males().candidate(), related.a(), related.b()}) {
            for (int node : some) {
                keep[node] = true;
            }
        }
        keepTwins(births, keep);
        return of(births, keep);
    }

    private static void keepTwins(Births births, boolean[] keep) {
        boolean[] seen = new boolean[births.nodes() + 1];
        for (int row = 0; row < births.rows(); row++) {
            int node = births.nodeOfRow()[row];
            keep[node] |= seen[node];
            seen[node] = true;
        }
    }

    private static Breeders of(Births births, boolean[] keep) {
        int count = 0;
        for (int node = 1; node <= births.nodes(); node++) {
            count += keep[node] ? 1 : 0;
        }
        var room = new Part.Room(1 + count + mostLate(births));
        int last = 0;
        for (int node = 1; node <= births.nodes(); node++) {
            if (keep[node]) {
                room.whole()[++last] = node;
            }
        }
        var part = Part.of(births, count, room, new int[births.kind().length]);
        return new Breeders(part.births(), part.whole(), part.place());
    }

    /** How many may be added while the arrays of the whole have room: the parents of each birth. */
    private static int mostLate(Births births) {
        return 2 * Math.min(LateBirths.MOST, births.kind().length - 1 - births.settled());
    }

    /** The breeder that a node is, or {@link Births#NONE}. */
    int of(int node) {
        return among(births.nodes(), place[node]);
    }

    private static int among(int breeders, int place) {
        return place <= breeders ? place : Births.NONE;
    }

    /**
     * Through whom the node is related to all others: half through one, half through the other. Its parents; if it is a
     * breeder, itself twice.
     */
    int[] parentsOf(int node, Births all) {
        int breeder = of(node);
        return breeder != Births.NONE
                ? new int[] {breeder, breeder}
                : new int[] {of(all.sire(node)), of(all.dam(node))};
    }

    FounderKinship cut(FounderKinship pairs) {
        return part().cut(pairs);
    }

    private Part part() {
        return new Part(births, whole, place);
    }

    /** With the parents of the births that were added. */
    Breeders with(Births before, Births grown) {
        var growth = new Growth(this, grown, grown.kind() == before.kind());
        for (int node = before.nodes() + 1; node <= grown.nodes(); node++) {
            growth.add(grown.sire(node));
            growth.add(grown.dam(node));
        }
        return growth.grown();
    }

    private static final class Growth {
        private final Births all;
        private final int settled;
        private final int[] whole;
        private final int[] place;
        private final byte[] kind;
        private final int[] parents;
        private final Births was;

        private int nodes;
        private Sparse extra;
        private int[] late;
        private int[] before;
        private int count;

        Growth(Breeders breeders, Births all, boolean sharesArrays) {
            this.all = all;
            was = breeders.births;
            settled = was.settled();
            nodes = was.nodes();
            extra = was.extra();
            count = was.late().count();
            late = was.late().node();
            before = was.late().before();
            int room = 1 + settled + mostLate(all);
            whole = sharesArrays ? breeders.whole : Arrays.copyOf(breeders.whole, room);
            kind = sharesArrays ? was.kind() : Arrays.copyOf(was.kind(), room);
            parents = sharesArrays ? was.parents() : Arrays.copyOf(was.parents(), 2 * room);
            place = sharesArrays ? breeders.place : new int[all.kind().length];
            for (int breeder = 1; !sharesArrays && breeder <= nodes; breeder++) {
                place[whole[breeder]] = breeder;
            }
        }

        void add(int node) {
            if (node == Births.NONE || among(nodes, place[node]) != Births.NONE) {
                return;
            }
            nodes++;
            whole[nodes] = node;
            place[node] = nodes;
            kind[nodes] = all.kind()[node];
            parents[2 * nodes] = place[all.sire(node)];
            parents[2 * nodes + 1] = place[all.dam(node)];
            double itsExtra = all.extra().of(node);
            extra = itsExtra == 0 ? extra : extra.with(nodes, itsExtra);
            insert(nodes, placeInOrder(node));
        }

        private long placeInOrder(int node) {
            return all.late().placeInOrder(node, all.settled());
        }

        private void insert(int breeder, long placeInOrder) {
            late = Arrays.copyOf(late, count + 1);
            before = Arrays.copyOf(before, count + 1);
            int itsBefore = firstAfter(placeInOrder);
            int at = count++;
            while (at > 0
                    && (before[at - 1] > itsBefore
                            || before[at - 1] == itsBefore && placeInOrder(whole[late[at - 1]]) > placeInOrder)) {
                late[at] = late[at - 1];
                before[at] = before[at - 1];
                at--;
            }
            late[at] = breeder;
            before[at] = itsBefore;
        }

        private int firstAfter(long placeInOrder) {
            int found = Arrays.binarySearch(whole, 1, settled + 1, LateBirths.settledAt(placeInOrder));
            return found < 0 ? -1 - found : found;
        }

        Breeders grown() {
            var births = new Births(
                    nodes,
                    0,
                    kind,
                    parents,
                    was.males(),
                    extra,
                    was.nodeOfRow(),
                    was.rowOfNode(),
                    was.generationEnd(),
                    was.founderKinship(),
                    new LateBirths(late, before, new int[0]));
            return new Breeders(births, whole, place);
        }
    }
}
