package org.demebook.census;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.census.CountTable.ALL;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.stream.IntStream;
import org.demebook.census.CountReleaseView.Cell;
import org.demebook.census.CountTable.Counted;
import org.demebook.notation.Sex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CountTableTest {
    private final List<Counted> animals = new ArrayList<>();

    @Test
    void a_count_is_told_where_three_keepers_stand_behind_it() {
        put(Sex.FEMALE, AgeClass.ADULT, 1, 1, 1, 2, 3);
        put(Sex.MALE, AgeClass.ADULT, 1, 1, 1, 2, 2);

        assertThat(count("female", "adult")).isEqualTo(5);
        assertThat(count("male", "adult")).isNull();
    }

    @Test
    void an_empty_cell_is_told_as_little_as_a_small_one() {
        put(Sex.MALE, AgeClass.YOUNG, 1);
        var cells = cells();

        assertThat(cells.stream().map(Cell::count)).containsOnlyNulls();
        assertThat(cells.stream().map(Cell::informationWithheld)).containsOnly(CountTable.WITHHELD);
    }

    @Test
    void each_cell_and_total_is_there_once() {
        assertThat(cells()).hasSize(20);
        assertThat(cells().stream().map(cell -> cell.sex() + cell.age())).doesNotHaveDuplicates();
    }

    @Test
    void a_total_is_told_where_none_of_its_counts_is_withheld() {
        for (var age : AgeClass.values()) {
            put(Sex.FEMALE, age, 1, 2, 3);
        }
        put(Sex.MALE, AgeClass.ADULT, 1, 2, 3);

        assertThat(count("female", ALL)).isEqualTo(12);
        assertThat(count("male", ALL)).isNull();
        assertThat(count(ALL, "adult")).isNull();
        assertThat(count(ALL, ALL)).isNull();
    }

    @Test
    void a_table_in_which_everything_is_told_has_all_its_totals() {
        for (var sex : Sex.values()) {
            for (var age : AgeClass.values()) {
                put(sex, age, 1, 2, 3, 4);
            }
        }
        assertThat(count(ALL, ALL)).isEqualTo(48);
        assertThat(count(ALL, "unknown")).isEqualTo(12);
        assertThat(count("unknown", ALL)).isEqualTo(16);
    }

    @Test
    void animals_on_loan_count_for_the_fewer_of_holders_and_owners() {
        for (int holder = 1; holder <= 3; holder++) {
            animals.add(new Counted(Sex.FEMALE, AgeClass.ADULT, keeper(holder), keeper(9)));
        }
        assertThat(count("female", "adult")).isNull();
        assertThat(new CountTable(animals).households()).isEqualTo(1);
    }

    @Test
    void an_animal_whose_place_is_in_dispute_is_counted_and_stands_for_no_keeper() {
        put(Sex.FEMALE, AgeClass.ADULT, 1, 2, 3);
        put(Sex.MALE, AgeClass.ADULT, 1, 2);
        animals.add(new Counted(Sex.FEMALE, AgeClass.ADULT, null, null));
        animals.add(new Counted(Sex.MALE, AgeClass.ADULT, null, null));

        assertThat(count("female", "adult")).isEqualTo(4);
        assertThat(count("male", "adult")).isNull();
        assertThat(new CountTable(animals).households()).isEqualTo(3);
    }

    @ParameterizedTest
    @CsvSource({
        "0, fewer than 3",
        "2, fewer than 3",
        "3, 3 to 5",
        "5, 3 to 5",
        "6, 6 to 10",
        "10, 6 to 10",
        "11, 11 to 20",
        "50, 21 to 50",
        "51, more than 50"
    })
    void the_number_of_keepers_is_told_as_a_range(int households, String range) {
        assertThat(CountTable.range(households)).isEqualTo(range);
    }

    // Three counts withheld while every total is told; computed by hand from the margins. Sexes by region stand here as
    // sexes by age: 9 8 15 | 32, 12 8 8 | 28, 7 2 9 | 18.
    @Test
    void the_attack_recovers_what_was_withheld_carelessly() {
        var careless = List.of(
                told("F", "north", 9),
                told("M", "north", 8),
                told("U", "north", 15),
                told(ALL, "north", 32),
                withheld("F", "middle"),
                told("M", "middle", 8),
                withheld("U", "middle"),
                told(ALL, "middle", 28),
                told("F", "south", 7),
                withheld("M", "south"),
                told("U", "south", 9),
                told(ALL, "south", 18),
                told("F", ALL, 28),
                told("M", ALL, 18),
                told("U", ALL, 32),
                told(ALL, ALL, 78));

        assertThat(Attack.recovered(careless)).isEqualTo(Map.of("F·middle", 12L, "U·middle", 8L, "M·south", 2L));
    }

    @Test
    void nothing_that_is_withheld_follows_from_all_that_is_told() {
        for (long seed = 0; seed < 300; seed++) {
            animals.clear();
            var random = new Random(seed);
            int keepers = 1 + random.nextInt(12);
            IntStream.range(0, random.nextInt(200))
                    .forEach(animal -> put(
                            Sex.values()[random.nextInt(3)],
                            AgeClass.values()[random.nextInt(4)],
                            1 + random.nextInt(keepers)));

            assertThat(Attack.recovered(cells())).as("seed %d", seed).isEmpty();
            for (var cell : cells()) {
                assertThat(cell.count() == null || keepersBehind(cell) >= 3)
                        .as("seed %d, %s", seed, cell)
                        .isTrue();
            }
        }
    }

    private long keepersBehind(Cell cell) {
        return animals.stream()
                .filter(animal ->
                        cell.sex().equals(ALL) || cell.sex().equals(animal.sex().word()))
                .filter(animal ->
                        cell.age().equals(ALL) || cell.age().equals(animal.age().word()))
                .map(Counted::holder)
                .distinct()
                .count();
    }

    private static Cell told(String sex, String age, int count) {
        return new Cell(sex, age, count, null);
    }

    private static Cell withheld(String sex, String age) {
        return new Cell(sex, age, null, CountTable.WITHHELD);
    }

    private void put(Sex sex, AgeClass age, int... keepers) {
        for (int keeper : keepers) {
            animals.add(new Counted(sex, age, keeper(keeper), keeper(keeper)));
        }
    }

    private static UUID keeper(int number) {
        return new UUID(0, number);
    }

    private List<Cell> cells() {
        return new CountTable(animals).cells();
    }

    private Integer count(String sex, String age) {
        return cells().stream()
                .filter(cell -> cell.sex().equals(sex) && cell.age().equals(age))
                .findFirst()
                .orElseThrow()
                .count();
    }
}
