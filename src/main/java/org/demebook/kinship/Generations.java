package org.demebook.kinship;

import java.util.Arrays;

/**
 * How many steps up the longest line of ancestors of each animal has, and the check that no animal is its own ancestor.
 *
 * <p>Inside the order of births an entity is a row, or the number of rows plus the index of a hidden male. Twins are one
 * entity: the one whose birth was told.
 */
final class Generations {
    private final PedigreeBuilder told;
    final int rows;
    final int entities;
    /** By row, the animal whose birth stands for it: itself, or for a twin the one that was born. */
    final int[] self;

    /** By entity: 0 without parents, else one more than the youngest parent; −1 for a twin. */
    final int[] of;

    Generations(PedigreeBuilder told) {
        this.told = told;
        rows = told.animals;
        entities = rows + told.males;
        self = new int[rows];
        of = new int[entities];
        findTwins();
        findGenerations();
    }

    private void findTwins() {
        for (int row = 0; row < rows; row++) {
            int at = row;
            for (int steps = 0; told.kind[at] == PedigreeBuilder.TWIN; steps++) {
                at = told.sire[at];
                if (steps > rows) {
                    throw new PedigreeLoop(loopOfTwins(at));
                }
            }
            self[row] = at;
        }
    }

    private int[] loopOfTwins(int in) {
        int[] loop = new int[rows];
        int length = 0;
        int at = in;
        do {
            loop[length++] = at;
            at = told.sire[at];
        } while (at != in);
        return fromSmallest(Arrays.copyOf(loop, length));
    }

    /** Depth first, with a stack of our own: a pedigree may be deeper than the thread's. */
    private void findGenerations() {
        int[] stack = new int[entities];
        boolean[] onStack = new boolean[entities];
        Arrays.fill(of, -1);
        for (int entity = 0; entity < entities; entity++) {
            int depth = 0;
            if (of[entity] < 0 && isOneself(entity)) {
                stack[depth++] = entity;
                onStack[entity] = true;
            }
            while (depth > 0) {
                int top = stack[depth - 1];
                int parent = firstUnplacedParent(top);
                if (parent >= 0) {
                    if (onStack[parent]) {
                        throw new PedigreeLoop(loopOnStack(stack, depth, parent));
                    }
                    stack[depth++] = parent;
                    onStack[parent] = true;
                } else {
                    of[top] = 1 + youngestParentGeneration(top);
                    onStack[top] = false;
                    depth--;
                }
            }
        }
    }

    boolean isOneself(int entity) {
        return entity >= rows || self[entity] == entity;
    }

    private int firstUnplacedParent(int entity) {
        for (int p = 0; p < parents(entity); p++) {
            int parent = parent(entity, p);
            if (parent >= 0 && of[parent] < 0) {
                return parent;
            }
        }
        return -1;
    }

    private int youngestParentGeneration(int entity) {
        int youngest = -1;
        for (int p = 0; p < parents(entity); p++) {
            int parent = parent(entity, p);
            youngest = Math.max(youngest, parent < 0 ? -1 : of[parent]);
        }
        return youngest;
    }

    int parents(int entity) {
        return entity < rows ? 2 : told.candidates[entity - rows].length;
    }

    int parent(int entity, int p) {
        if (entity < rows) {
            return entityOf(p == 0 ? told.sire[entity] : told.dam[entity]);
        }
        // A candidate without probability is no parent, not even in a loop.
        return told.shares[entity - rows][p] == 0 ? -1 : entityOf(told.candidates[entity - rows][p]);
    }

    int entityOf(int parent) {
        if (parent >= 0) {
            return self[parent];
        }
        return parent == Pedigree.UNKNOWN ? -1 : rows + PedigreeBuilder.male(parent);
    }

    private int[] loopOnStack(int[] stack, int depth, int from) {
        int start = depth - 1;
        while (stack[start] != from) {
            start--;
        }
        int[] loop = new int[depth - start];
        int length = 0;
        for (int i = start; i < depth; i++) {
            if (stack[i] < rows) {
                loop[length++] = stack[i];
            }
        }
        return fromSmallest(Arrays.copyOf(loop, length));
    }

    private static int[] fromSmallest(int[] loop) {
        int smallest = 0;
        for (int i = 1; i < loop.length; i++) {
            if (loop[i] < loop[smallest]) {
                smallest = i;
            }
        }
        int[] turned = new int[loop.length];
        for (int i = 0; i < loop.length; i++) {
            turned[i] = loop[(smallest + i) % loop.length];
        }
        return turned;
    }
}
