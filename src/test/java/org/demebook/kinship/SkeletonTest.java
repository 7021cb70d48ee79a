package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import java.util.UUID;
import org.demebook.kinship.Skeleton.Animal;
import org.demebook.kinship.Skeleton.Birth;
import org.demebook.kinship.Skeleton.Candidate;
import org.demebook.kinship.Skeleton.Founder;
import org.demebook.kinship.Skeleton.FounderKinship;
import org.demebook.kinship.Skeleton.OfUnknownParents;
import org.demebook.kinship.Skeleton.Parthenogen;
import org.demebook.kinship.Skeleton.Twin;
import org.demebook.kinship.Skeleton.Young;
import org.demebook.kinship.Skeleton.YoungOfOneOf;
import org.junit.jupiter.api.Test;

class SkeletonTest {
    private static final TreeMap<String, Long> HEADS = new TreeMap<>(java.util.Map.of("H", 12L, "U", 7L));

    private final List<Animal> animals = new ArrayList<>();

    // Cross sections of the other tests of this package: full sibs ¼, one draw .34375 and two draws .281875 by
    // averaging
    // over all assignments (kinship2 1.9.6.2, twelve digits), terminal fusion F = 1 − y.
    @Test
    void every_kind_of_birth_has_the_figures_that_it_has_elsewhere() {
        var a = add(new Founder(0));
        var c = add(new Founder(0));
        var b = add(new Founder(0));
        var d = add(new Founder(0));
        var s1 = add(new Young(a, c));
        var s2 = add(new Young(b, c));
        var s3 = add(new Young(a, d));
        var x = add(new Young(a, c));
        var candidates = List.of(new Candidate(s1, .5), new Candidate(s2, .3), new Candidate(s3, .2));
        var draw = new UUID(9, 9);
        var k1 = add(new YoungOfOneOf(draw, candidates, x));
        var k2 = add(new YoungOfOneOf(draw, candidates, x));
        var k3 = add(new YoungOfOneOf(null, candidates, x));
        var alone = add(new Parthenogen(x, Fusion.TERMINAL, .25));
        var twin = add(new Twin(k1));
        var stray = add(new OfUnknownParents());
        var skeleton = new Skeleton(HEADS, animals, List.of());
        var pedigree = skeleton.pedigree();

        assertThat(pedigree.kinship(row(skeleton, k1), row(skeleton, k2))).isCloseTo(.34375, within(1e-15));
        assertThat(pedigree.kinship(row(skeleton, k1), row(skeleton, k3))).isCloseTo(.281875, within(1e-15));
        assertThat(pedigree.inbreeding(row(skeleton, alone))).isEqualTo(.75);
        assertThat(pedigree.kinship(row(skeleton, twin), row(skeleton, k2))).isCloseTo(.34375, within(1e-15));
        assertThat(pedigree.knownFraction(row(skeleton, stray))).isZero();
    }

    @Test
    void figures_are_the_same_to_the_last_bit_in_whatever_order_the_animals_are_listed() {
        var random = new Random(3);
        population(random);
        var figures = new Skeleton(HEADS, animals, List.of()).figures(Convention.UNRELATED);
        for (int i = 0; i < 20; i++) {
            Collections.shuffle(animals, random);
            assertThat(new Skeleton(HEADS, animals, List.of()).figures(Convention.UNRELATED))
                    .isEqualTo(figures);
        }
    }

    @Test
    void figures_say_the_journal_heads_and_the_convention_that_they_rest_on() {
        population(new Random(4));
        for (var convention : Convention.values()) {
            var figures = new Skeleton(HEADS, animals, List.of()).figures(convention);
            assertThat(figures.journalHeads()).isEqualTo(HEADS);
            assertThat(figures.convention()).isEqualTo(convention);
            var pool = figures.pool().orElseThrow();
            assertThat(pool.geneDiversity()).isBetween(0., 1.).isEqualTo(1 - pool.meanKinship());
        }
    }

    @Test
    void figures_are_those_of_the_pedigree_and_of_its_living() {
        population(new Random(5));
        var skeleton = new Skeleton(HEADS, animals, List.of());
        var pedigree = skeleton.pedigree();
        var pool = pedigree.pool(skeleton.living());
        var figures = skeleton.figures(Convention.UNRELATED);
        for (int row = 0; row < pedigree.size(); row++) {
            var of = figures.animals().get(row);
            assertThat(of.id()).isEqualTo(skeleton.animals().get(row).id());
            assertThat(of.inbreeding()).isEqualTo(pedigree.inbreeding(row));
            assertThat(of.meanKinship()).isEqualTo(pool.meanKinship(row));
            assertThat(of.knownFraction()).isEqualTo(pedigree.knownFraction(row));
        }
        var contributions = pool.founderContributions();
        var shares = figures.pool().orElseThrow().founders();
        assertThat(shares).hasSizeGreaterThan(3);
        for (int i = 0; i < shares.size(); i++) {
            int row = contributions.founders()[i];
            assertThat(shares.get(i))
                    .isEqualTo(new SkeletonFigures.Share(
                            skeleton.animals().get(row).id(), contributions.shares()[i]));
        }
        assertThat(figures.pool().orElseThrow().living()).isEqualTo(pool.size());
    }

    @Test
    void kinship_of_founders_from_dna_goes_with_it() {
        var a = add(new Founder(.125));
        var b = add(new Founder(0));
        add(new Young(a, b));
        var figures =
                new Skeleton(HEADS, animals, List.of(new FounderKinship(a, b, .0625))).figures(Convention.UNRELATED);
        assertThat(figures.animals())
                .extracting(SkeletonFigures.OfAnimal::inbreeding)
                .containsExactly(.125, 0., .0625);
    }

    @Test
    void without_a_living_animal_there_is_no_pool() {
        animals.add(new Animal(new UUID(0, 1), new Founder(0), false));
        var figures = new Skeleton(HEADS, animals, List.of()).figures(Convention.UNRELATED);
        assertThat(figures.pool()).isEmpty();
        assertThat(figures.animals().get(0).meanKinship()).isNaN();
    }

    @Test
    void an_animal_listed_twice_or_named_and_not_listed_is_refused() {
        var a = add(new Founder(0));
        animals.add(new Animal(a, new Founder(0), true));
        assertThatThrownBy(() -> new Skeleton(HEADS, animals, List.of()).pedigree())
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("animal " + a + " is listed twice");
        var stranger = new UUID(5, 5);
        assertThatThrownBy(() -> new Skeleton(HEADS, List.of(new Animal(a, new Young(stranger, null), true)), List.of())
                        .pedigree())
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("animal " + stranger + " is named and not listed");
    }

    @Test
    void a_loop_is_named_by_places_in_the_list() {
        var a = new UUID(0, 1);
        var b = new UUID(0, 2);
        animals.add(new Animal(b, new Young(a, null), true));
        animals.add(new Animal(a, new Young(b, null), true));
        var skeleton = new Skeleton(HEADS, animals, List.of());
        assertThatThrownBy(skeleton::pedigree)
                .isInstanceOfSatisfying(
                        PedigreeLoop.class, loop -> assertThat(loop.animals()).containsOnly(0, 1));
    }

    private void population(Random random) {
        for (int i = 0; i < 150; i++) {
            boolean founder = i < 6;
            int kind = random.nextInt(8);
            var sire = founder ? null : any(random);
            var dam = founder ? null : any(random);
            Birth birth = founder
                    ? new Founder(0)
                    : kind == 0
                            ? new OfUnknownParents()
                            : kind == 1
                                    ? new YoungOfOneOf(
                                            random.nextBoolean() ? new UUID(1, i) : null,
                                            List.of(new Candidate(any(random), .5), new Candidate(any(random), .3)),
                                            dam)
                                    : kind == 2 ? new Young(null, dam) : new Young(sire, dam);
            animals.add(new Animal(new UUID(random.nextLong(), i), birth, i > 20));
        }
    }

    private UUID any(Random random) {
        return animals.get(random.nextInt(animals.size())).id();
    }

    private UUID add(Birth birth) {
        var id = new UUID(0, animals.size() + 1);
        animals.add(new Animal(id, birth, true));
        return id;
    }

    private static int row(Skeleton skeleton, UUID id) {
        for (int row = 0; row < skeleton.animals().size(); row++) {
            if (skeleton.animals().get(row).id().equals(id)) {
                return row;
            }
        }
        throw new AssertionError(id);
    }
}
