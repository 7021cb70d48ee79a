package org.demebook.disclosure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.Predicate;
import org.demebook.disclosure.Plan.Line;
import org.demebook.disclosure.Tally.Counted;
import org.junit.jupiter.api.Test;

/**
 * Two tables that are not crossed, told in two divisions, against the same two as margins of one crossed table, in which
 * every contents are possible that there can be: the definition that divisions are a shorter way to write.
 */
class DivisionsTest {
    private static final Rules RULES = new Rules(3, 20);
    private static final List<String> AGES = List.of("young", "adult", "old");
    private static final List<String> REGIONS = List.of("north", "middle", "south");
    private static final int KEEPERS = 6;

    private record Animal(String name, String age, String region, String holder, String owner) {}

    @Test
    void they_tell_as_much_as_the_crossed_table_whose_margins_they_are() {
        int withheld = 0;
        int unsafe = 0;
        for (int world = 0; world < 60; world++) {
            var random = new Random(world);
            var animals = herd(random);
            var crossed = new ArrayList<Release>();
            var divided = new ArrayList<Release>();
            for (int date = 0; date < 2; date++) {
                var shorter = Suppression.choose(divided, divided(animals), RULES);
                var longer = Suppression.choose(crossed, crossed(animals), RULES);
                var seed = "world %d, date %d".formatted(world, date);
                assertThat(weight(shorter)).as(seed).isEqualTo(weight(longer));
                withheld += weight(shorter);
                for (var told : List.of(shorter.told(), longer.told(), some(random, shorter))) {
                    var one = new Release(shorter.tally(), told);
                    var other = new Release(longer.tally(), told);
                    assertThat(Audit.intervals(one, RULES)).as(seed).isEqualTo(Audit.intervals(other, RULES));
                    var audit = Audit.of(divided, one, RULES);
                    assertThat(audit.unsafe())
                            .as(seed)
                            .isEqualTo(Audit.of(crossed, other, RULES).unsafe());
                    unsafe += audit.passed() ? 0 : 1;
                }
                divided.add(shorter);
                crossed.add(new Release(longer.tally(), shorter.told()));
                change(random, animals, date);
            }
        }
        // there was something to find
        assertThat(withheld).isGreaterThan(200);
        assertThat(unsafe).isGreaterThan(20);
    }

    @Test
    void a_unit_is_in_one_base_cell_of_each_division() {
        var plan = divided(List.of()).plan();
        assertThatThrownBy(() -> new Tally(plan, List.of(new Counted("one", "age young", "A", "A")), Set.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("2 divisions");
        assertThatThrownBy(() -> new Tally(
                        plan, List.of(new Counted("one", List.of("region north", "age young"), "A", "A")), Set.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("region north");
    }

    // ── the two ways to write it ─────────────────────────────────────────────────────────────────────────────────────

    private static Tally divided(List<Animal> animals) {
        var plan = new Plan(
                List.of(cells("age ", AGES), cells("region ", REGIONS)),
                figures(cell -> cell.startsWith("age "), (figure, cell) -> figure.equals(cell)),
                lines());
        return new Tally(
                plan,
                animals.stream()
                        .map(animal -> new Counted(
                                animal.name,
                                List.of("age " + animal.age, "region " + animal.region),
                                animal.holder,
                                animal.owner))
                        .toList(),
                Set.of());
    }

    private static Tally crossed(List<Animal> animals) {
        var base = new ArrayList<String>();
        AGES.forEach(age -> REGIONS.forEach(region -> base.add("age " + age + "|region " + region)));
        var plan = new Plan(
                List.of(base),
                figures(cell -> true, (figure, cell) -> List.of(cell.split("\\|"))
                        .contains(figure)),
                lines());
        return new Tally(
                plan,
                animals.stream()
                        .map(animal -> new Counted(
                                animal.name,
                                "age " + animal.age + "|region " + animal.region,
                                animal.holder,
                                animal.owner))
                        .toList(),
                Set.of());
    }

    private interface Covers {
        boolean test(String figure, String cell);
    }

    private static List<Figure> figures(Predicate<String> all, Covers covers) {
        var figures = new ArrayList<Figure>();
        for (var name : cells("age ", AGES)) {
            figures.add(new Figure(name, cell -> covers.test(name, cell)));
        }
        for (var name : cells("region ", REGIONS)) {
            figures.add(new Figure(name, cell -> covers.test(name, cell)));
        }
        figures.add(new Figure("total", all));
        return figures;
    }

    private static List<Line> lines() {
        return List.of(new Line("total", cells("age ", AGES)), new Line("total", cells("region ", REGIONS)));
    }

    private static List<String> cells(String of, List<String> words) {
        return words.stream().map(word -> of + word).toList();
    }

    // ── a herd on two dates ──────────────────────────────────────────────────────────────────────────────────────────

    private static List<Animal> herd(Random random) {
        var animals = new ArrayList<Animal>();
        int size = 6 + random.nextInt(20);
        for (int i = 0; i < size; i++) {
            animals.add(animal(random, "n" + i));
        }
        return animals;
    }

    private static Animal animal(Random random, String name) {
        int holder = (int) (KEEPERS * random.nextDouble() * random.nextDouble());
        int owner = random.nextInt(6) == 0 ? random.nextInt(KEEPERS) : holder;
        return new Animal(
                name,
                AGES.get(random.nextInt(AGES.size())),
                REGIONS.get(random.nextInt(4) > 0 ? holder % REGIONS.size() : random.nextInt(REGIONS.size())),
                "K" + holder,
                "K" + owner);
    }

    private static void change(Random random, List<Animal> animals, int date) {
        int changes = random.nextInt(4);
        for (int i = 0; i < changes; i++) {
            animals.remove(random.nextInt(animals.size()));
            animals.add(animal(random, "later" + date + i));
            animals.add(animal(random, "also" + date + i));
        }
    }

    private static int weight(Release release) {
        return release.tally().plan().figures().stream()
                .filter(figure -> !release.told().contains(figure.name()))
                .mapToInt(release.tally()::value)
                .sum();
    }

    private static Set<String> some(Random random, Release release) {
        var some = new HashSet<String>();
        release.tally().plan().figures().forEach(figure -> {
            if (random.nextInt(3) > 0) {
                some.add(figure.name());
            }
        });
        return some;
    }
}
