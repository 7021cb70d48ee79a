package org.demebook.census;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import org.demebook.census.CountReleaseView.Cell;
import org.demebook.notation.Sex;
import org.jspecify.annotations.Nullable;

/**
 * Living animals by sex and age class, with what may not be told left out.
 *
 * <p>A cell is told where animals of at least three households stand in it, whether one looks at who holds them or at whose
 * they are; an empty cell is not told either, since that all others have none is something about each of them. A total is
 * told where every cell that it sums is: it says nothing that the cells do not say, so that no sum or difference of what
 * is told gives a cell that is not. An animal whose place is in dispute is counted and stands for no household.
 *
 * <p>That a single household may have most of a cell (dominance) is not looked at.
 */
final class CountTable {
    static final int FEWEST_HOUSEHOLDS = 3;
    static final String ALL = "all";
    static final String WITHHELD =
            "withheld: animals of fewer than three keepers, or a total from which such a count would follow";

    /**
     * An animal in the table.
     *
     * @param holder household where it lives; null when that is in dispute
     * @param owner household whose it is; null likewise
     */
    record Counted(
            Sex sex,
            AgeClass age,
            @Nullable UUID holder,
            @Nullable UUID owner) {}

    private final List<Counted> animals;

    CountTable(List<Counted> animals) {
        this.animals = List.copyOf(animals);
    }

    /** Every cell and every total, each age class of all sexes last. */
    List<Cell> cells() {
        var cells = new ArrayList<Cell>();
        for (var sex : Sex.values()) {
            for (var age : AgeClass.values()) {
                cells.add(cell(
                        sex.word(),
                        age.word(),
                        isTold(sex, age),
                        animal -> animal.sex() == sex && animal.age() == age));
            }
            boolean row = all(AgeClass.values(), age -> isTold(sex, age));
            cells.add(cell(sex.word(), ALL, row, animal -> animal.sex() == sex));
        }
        for (var age : AgeClass.values()) {
            boolean column = all(Sex.values(), sex -> isTold(sex, age));
            cells.add(cell(ALL, age.word(), column, animal -> animal.age() == age));
        }
        boolean every = all(Sex.values(), sex -> all(AgeClass.values(), age -> isTold(sex, age)));
        cells.add(cell(ALL, ALL, every, animal -> true));
        return cells;
    }

    private static <T> boolean all(T[] values, Predicate<T> rule) {
        return List.of(values).stream().allMatch(rule);
    }

    private Cell cell(String sex, String age, boolean told, Predicate<Counted> in) {
        return told
                ? new Cell(sex, age, (int) animals.stream().filter(in).count(), null)
                : new Cell(sex, age, null, WITHHELD);
    }

    private boolean isTold(Sex sex, AgeClass age) {
        return households(animals.stream()
                        .filter(animal -> animal.sex() == sex && animal.age() == age)
                        .toList())
                >= FEWEST_HOUSEHOLDS;
    }

    /** How many households contribute to the whole table. */
    int households() {
        return households(animals);
    }

    private static int households(List<Counted> animals) {
        Set<UUID> holders = new HashSet<>();
        Set<UUID> owners = new HashSet<>();
        for (var animal : animals) {
            if (animal.holder() != null && animal.owner() != null) {
                holders.add(animal.holder());
                owners.add(animal.owner());
            }
        }
        return Math.min(holders.size(), owners.size());
    }

    /** A number of keepers as a range. */
    static String range(int households) {
        int[] from = {3, 6, 11, 21, 51};
        if (households < from[0]) {
            return "fewer than 3";
        }
        for (int i = 1; i < from.length; i++) {
            if (households < from[i]) {
                return String.format(Locale.ROOT, "%d to %d", from[i - 1], from[i] - 1);
            }
        }
        return "more than 50";
    }
}
