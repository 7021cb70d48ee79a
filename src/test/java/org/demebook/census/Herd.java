package org.demebook.census;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.demebook.census.CountReleaseView.Cell;
import org.demebook.census.Preparation.Earlier;

/** Animals for tests of what is counted, each keeper with a collection of their own unless they share one. */
final class Herd {
    static final LocalDate DAY = LocalDate.of(2026, 6, 1);
    static final int DAYS_OF_AGE_TO_BREED = 1095;

    final List<CountedAnimal> animals = new ArrayList<>();
    private final Map<UUID, UUID> households = new HashMap<>();
    private final Map<UUID, Set<UUID>> keepers = new HashMap<>();
    private final Set<UUID> waivers = new HashSet<>();
    private final Map<UUID, String> regions = new HashMap<>();
    private List<String> fixed = List.of();

    /** So many animals of each keeper. */
    Herd put(String sex, String age, String born, int each, int... keepers) {
        for (int keeper : keepers) {
            for (int i = 0; i < each; i++) {
                loan(sex, age, born, keeper, keeper);
            }
        }
        return this;
    }

    Herd loan(String sex, String age, String born, int holder, int owner) {
        for (int keeper : new int[] {holder, owner}) {
            households.putIfAbsent(id(keeper), id(keeper));
            keepers.putIfAbsent(id(keeper), Set.of(id(keeper)));
        }
        animals.add(new CountedAnimal(
                "n" + animals.size(), sex, age, born, id(holder), id(owner), regions.get(id(holder))));
        return this;
    }

    Herd fix(String... names) {
        fixed = List.of(names);
        return this;
    }

    /** The region of what a keeper gets from now on; null: not stated. */
    Herd in(String region, int... keepers) {
        for (int keeper : keepers) {
            regions.put(id(keeper), region);
        }
        return this;
    }

    Herd share(int keeper, int other) {
        households.put(id(other), id(keeper));
        return this;
    }

    Herd waive(int keeper) {
        waivers.add(id(keeper));
        return this;
    }

    static UUID id(int keeper) {
        return new UUID(0, keeper);
    }

    Respondents respondents() {
        return new Respondents(households, keepers, waivers);
    }

    List<Cell> cells(Earlier... earlier) {
        return new Preparation(DAY, animals, fixed, respondents(), DAYS_OF_AGE_TO_BREED, new CountRulesView(3, 20, 0))
                .cells(List.of(earlier));
    }

    static Cell region(List<Cell> cells, String region) {
        return cells.stream()
                .filter(cell -> Heading.of(cell).equals(new Heading("all", "all", "all", region)))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no cell of %s in %s".formatted(region, cells)));
    }

    static Cell cell(List<Cell> cells, String sex, String age, String born) {
        return cells.stream()
                .filter(cell -> Heading.of(cell).equals(new Heading(sex, age, born, "all")))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no cell of %s, %s, %s in %s".formatted(sex, age, born, cells)));
    }
}
