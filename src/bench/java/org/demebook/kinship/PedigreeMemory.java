package org.demebook.kinship;

/** Prints what a pedigree holds in memory once built, and with its second convention, after garbage was collected. */
public final class PedigreeMemory {
    private PedigreeMemory() {}

    public static void main(String[] args) {
        var grown = new GrownPedigree(args.length == 0 ? 1_000_000 : Integer.parseInt(args[0]));
        long before = used();
        var pedigree = grown.told().build();
        System.out.printf("%d animals: %.1f MB%n", pedigree.size(), (used() - before) / 1e6);
        var known = pedigree.under(Convention.KNOWN_ONLY);
        System.out.printf("under both conventions: %.1f MB%n", (used() - before) / 1e6);
        if (pedigree.size() != known.size() || grown.animals() != known.size()) {
            throw new AssertionError("keeps all three alive until here");
        }
    }

    private static long used() {
        for (int i = 0; i < 5; i++) {
            System.gc();
        }
        var runtime = Runtime.getRuntime();
        return runtime.totalMemory() - runtime.freeMemory();
    }
}
