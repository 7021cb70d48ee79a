package org.demebook.handover;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.notation.Origin.CAPTIVE_BRED;
import static org.demebook.notation.Origin.UNKNOWN;
import static org.demebook.notation.Origin.WILD_CAUGHT;

import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.registry.AnimalView;
import org.demebook.registry.StatedSire;
import org.junit.jupiter.api.Test;

/**
 * After CITES Resolution Conf. 12.3 and Notification 1998/14: a litter of a female that was taken from the wild when gravid is
 * W or R, not F; a first generation of a captive mating is F where the definition of C is not met.
 */
class SourceHintTest {
    private static final StatedSire SIRE = StatedSire.known("MC-H-2-*");
    private static final StatedSire NONE = StatedSire.none("terminal", null);

    @Test
    void young_of_a_wild_caught_dam_and_an_unknown_sire_may_not_count_as_captive_bred() {
        assertThat(hint(CAPTIVE_BRED, StatedSire.UNKNOWN, WILD_CAUGHT)).isEqualTo(SourceHint.MAY_NOT_COUNT);
    }

    @Test
    void so_may_those_of_a_wild_caught_pair_which_may_have_met_in_the_wild() {
        assertThat(hint(CAPTIVE_BRED, SIRE, WILD_CAUGHT, WILD_CAUGHT)).isEqualTo(SourceHint.MAY_NOT_COUNT);
        assertThat(hint(CAPTIVE_BRED, SIRE, WILD_CAUGHT, UNKNOWN)).isEqualTo(SourceHint.MAY_NOT_COUNT);
    }

    @Test
    void so_may_those_without_a_sire() {
        assertThat(hint(CAPTIVE_BRED, NONE, WILD_CAUGHT)).isEqualTo(SourceHint.MAY_NOT_COUNT);
    }

    @Test
    void where_a_captive_bred_male_is_the_sire_she_was_not_gravid_when_she_was_taken() {
        assertThat(hint(CAPTIVE_BRED, SIRE, WILD_CAUGHT, CAPTIVE_BRED)).isEqualTo(SourceHint.BORN_OR_BRED);
    }

    @Test
    void a_wild_caught_sire_leaves_open_whether_its_young_are_bred_or_born() {
        assertThat(hint(CAPTIVE_BRED, SIRE, CAPTIVE_BRED, WILD_CAUGHT)).isEqualTo(SourceHint.BORN_OR_BRED);
    }

    @Test
    void young_of_captive_bred_parents_are_still_for_the_authority_to_say() {
        assertThat(hint(CAPTIVE_BRED, SIRE, CAPTIVE_BRED, CAPTIVE_BRED)).isEqualTo(SourceHint.BRED);
    }

    @Test
    void an_unknown_parent_leaves_it_open() {
        assertThat(hint(CAPTIVE_BRED, StatedSire.UNKNOWN, CAPTIVE_BRED)).isEqualTo(SourceHint.NOT_KNOWN);
        assertThat(SourceHint.of(animal(UNKNOWN, StatedSire.UNKNOWN), null, List.of()))
                .isEqualTo(SourceHint.NOT_KNOWN);
    }

    @Test
    void a_wild_caught_animal_is_said_to_be_one() {
        assertThat(SourceHint.of(animal(WILD_CAUGHT, StatedSire.UNKNOWN), null, List.of()))
                .isEqualTo(SourceHint.WILD);
    }

    @Test
    void no_hint_says_that_anything_is_legal_and_each_ends_with_the_authority() {
        assertThat(List.of(
                        SourceHint.WILD,
                        SourceHint.MAY_NOT_COUNT,
                        SourceHint.BORN_OR_BRED,
                        SourceHint.BRED,
                        SourceHint.NOT_KNOWN))
                .allMatch(hint -> hint.contains("authority"))
                .noneMatch(hint -> hint.toLowerCase().contains("legal"));
    }

    private static String hint(Origin origin, StatedSire sire, Origin dam, Origin... sires) {
        return SourceHint.of(
                animal(origin, sire),
                animal(dam, StatedSire.UNKNOWN),
                Stream.of(sires).map(male -> animal(male, StatedSire.UNKNOWN)).toList());
    }

    private static AnimalView animal(Origin origin, StatedSire sire) {
        return new AnimalView(
                UUID.randomUUID(),
                "MC-H-1-B",
                Sex.UNKNOWN,
                null,
                true,
                origin,
                null,
                null,
                sire,
                null,
                List.of(),
                null,
                1L,
                null);
    }
}
