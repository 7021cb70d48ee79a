package org.demebook;

/** How much a seeded test looks at: the usual, or with {@code -Ddemebook.thorough=true} more ({@code mvn -Pthorough verify}). */
public final class Thorough {
    private Thorough() {}

    /** @param property that overrides both, such as {@code demebook.pedigrees} */
    public static int size(String property, int usual, int thorough) {
        return Integer.getInteger(property, Boolean.getBoolean("demebook.thorough") ? thorough : usual);
    }
}
