package org.demebook.telling;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import org.demebook.consent.Action;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Purpose;
import org.demebook.kinship.Convention;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Statement.AncestryTold;
import org.demebook.protocol.Statement.HoldingTold;
import org.demebook.protocol.Statement.SireShare;
import org.demebook.protocol.Told;
import org.junit.jupiter.api.Test;

/** What is granted survives the way to another node, and nothing is added on it. */
class GrantedTest {
    private static final String NODE = "kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k";

    @Test
    void every_extent_is_read_as_it_was_written() {
        for (int bits = 0; bits < 256; bits++) {
            var granted = new Granted(bits);
            assertThat(Granted.read(granted.json())).isEqualTo(granted);
        }
    }

    @Test
    void words_that_are_not_known_grant_nothing() {
        var json = JsonNodeFactory.instance.arrayNode();
        json.add("pedigree-view identity read")
                .add("pedigree-view notes read")
                .add("everything")
                .add(7)
                .addNull();
        var granted = Granted.read(json);
        assertThat(granted.may(Purpose.PEDIGREE_VIEW, FieldGroup.IDENTITY, Action.READ))
                .isTrue();
        assertThat(Integer.bitCount(granted.bits())).isEqualTo(1);
        assertThat(Granted.read(JsonNodeFactory.instance.textNode("pedigree-view identity read")))
                .isEqualTo(Granted.NOTHING);
    }

    @Test
    void a_skeleton_is_computed_with_and_not_read() {
        assertThat(Granted.SKELETON.tellsParents()).isTrue();
        assertThat(Granted.SKELETON.readsNumber()).isFalse();
        assertThat(Granted.SKELETON.readsParents()).isFalse();
    }

    @Test
    void a_telling_that_is_due_to_fewer_is_withdrawn_and_one_that_is_due_to_more_stays() {
        var says = holding(id(1), true);
        var population = UUID.randomUUID();
        var digest = Telling.digest(says);
        var toBoth = new TellingRow(population, 4, digest, Set.of("a", "b"));
        var lost = new TellingRow(population, 5, digest, null);

        var fewer = Difference.of(List.of(new Telling(says, Set.of("b"))), List.of(toBoth));
        assertThat(fewer.withdrawn()).containsExactly(4L);
        assertThat(fewer.said()).containsExactly(new Telling(says, Set.of("b")));

        var more = Difference.of(List.of(new Telling(says, Set.of("a", "b", "c"))), List.of(toBoth, lost));
        assertThat(more.withdrawn()).containsExactly(5L);
        assertThat(more.said()).containsExactly(new Telling(says, Set.of("c")));

        assertThat(Difference.of(List.of(new Telling(says, Set.of("a", "b"))), List.of(toBoth))
                        .isNone())
                .isTrue();
        assertThat(Difference.of(List.of(), List.of(toBoth)).withdrawn()).containsExactly(4L);
    }

    // two founders and their young, all alive: mean kinship (½ + ½ + ½ + 4 · ¼) / 9 = 5/18. The young's dam has two
    // names
    @Test
    void animals_that_are_the_same_count_once_in_figures_between_nodes() {
        var ancestry = new TreeMap<AnimalId, AncestryTold>();
        ancestry.put(id(1), ancestry(id(1), null, null));
        ancestry.put(id(2), ancestry(id(2), null, null));
        ancestry.put(id(3), ancestry(id(3), null, null));
        ancestry.put(id(4), ancestry(id(4), id(3), id(2)));
        SortedMap<AnimalId, HoldingTold> holdings = new TreeMap<>();
        ancestry.keySet().forEach(id -> holdings.put(id, holding(id, true)));
        var sameAs = new TreeMap<AnimalId, AnimalId>();
        sameAs.put(id(3), id(1));
        var heads = new TreeMap<String, Long>();
        heads.put(NODE, 9L);
        var figures = FederatedFigures.skeleton(heads, new Told(ancestry, holdings, new TreeSet<>(), sameAs))
                .figures(Convention.UNRELATED);
        assertThat(figures.animals()).hasSize(3);
        assertThat(figures.pool().orElseThrow().meanKinship()).isEqualTo(5 / 18.0);
        assertThat(figures.journalHeads()).isEqualTo(heads);
    }

    private static AnimalId id(int serial) {
        return new AnimalId(new UUID(0x4000, Long.MIN_VALUE + serial), NODE);
    }

    private static AncestryTold ancestry(AnimalId id, AnimalId dam, AnimalId sire) {
        return new AncestryTold(
                id,
                Optional.empty(),
                Optional.ofNullable(dam),
                sire == null ? List.of() : List.of(new SireShare(sire, 1_000_000)),
                dam == null,
                detail());
    }

    private static HoldingTold holding(AnimalId id, boolean alive) {
        return new HoldingTold(id, "female", alive, "somebody", detail());
    }

    private static ObjectNode detail() {
        return JsonNodeFactory.instance.objectNode();
    }

    // as the room crossing writes it: the animal first, a dam with her number, a sire without
    @Test
    void ancestors_that_came_with_an_animal_stand_in_for_those_of_which_nothing_is_told() throws java.io.IOException {
        var record = (ObjectNode) new com.fasterxml.jackson.databind.ObjectMapper()
                .readTree("""
                {"forebears": [
                  {"animal": "%s", "sex": "female", "born": 2024, "dam": "%s", "sires": [{"sire": "%s", "share": 1000000}]},
                  {"animal": "%s", "number": "MC-U-7-A", "founder": 1},
                  {"animal": "%s"},
                  {"animal": "nonsense"}, 7,
                  {"animal": "%s", "sires": [{"sire": "%s", "share": 900000}, {"sire": "%s", "share": 900000}], "born": "x"}]}
                """.formatted(id(1), id(2), id(3), id(2), id(3), id(4), id(5), id(6)));
        var told = new TreeMap<AnimalId, AncestryTold>();
        var known = ancestry(id(2), null, null);
        told.put(id(2), known);
        Handed.addTo(told, record);
        assertThat(told).containsOnlyKeys(id(1), id(2), id(3), id(4));
        assertThat(told.get(id(2))).isSameAs(known);
        assertThat(new ToldDetail(told.get(id(1))).granted()).isEqualTo(Granted.READ);
        assertThat(told.get(id(1)).dam()).contains(id(2));
        assertThat(told.get(id(1)).born()).contains("2024");
        assertThat(new ToldDetail(told.get(id(3))).granted()).isEqualTo(Granted.SKELETON);
        assertThat(told.get(id(4)).sires()).isEmpty();
        assertThat(told.get(id(4)).born()).isEmpty();
    }
}
