package org.demebook.breeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.breeding.SignKind.COPULATION;
import static org.demebook.breeding.SignKind.LABOUR_FINISHED;
import static org.demebook.breeding.SignKind.LABOUR_STARTED;
import static org.demebook.breeding.SignKind.LAYING;
import static org.demebook.breeding.SignKind.OVULATION;
import static org.demebook.breeding.SignKind.POST_OVULATION_SHED;
import static org.demebook.gestation.HowKnown.GUESSED;
import static org.demebook.gestation.HowKnown.SEEN;
import static org.demebook.gestation.HowKnown.SKIN_FOUND;
import static org.demebook.taxon.BirthMode.EGG_LAYING;
import static org.demebook.taxon.BirthMode.LIVE_BEARING;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.demebook.breeding.Cycle.State;
import org.demebook.gestation.HowKnown;
import org.demebook.litter.Birth;
import org.demebook.notation.RoughDate;
import org.junit.jupiter.api.Test;

/** What belongs to a cycle and how it stands: common practice, no source. */
class CycleTest {
    private static final UUID M013 = new UUID(0, 13);
    private static final LocalDate TODAY = LocalDate.parse("2026-06-01");

    @Test
    void a_female_is_gravid_from_an_ovulation_or_the_shed_after_it_until_her_litter() {
        assertThat(cycle(sign(COPULATION, "2026-02-01")).gravid()).isFalse();
        assertThat(cycle(sign(OVULATION, "2026-02-24")).gravid()).isTrue();
        assertThat(cycle(sign(POST_OVULATION_SHED, "2026-03-14")).gravid()).isTrue();
        assertThat(Cycle.of(LIVE_BEARING, List.of(sign(POST_OVULATION_SHED, "2026-01-14")), births("2026-04-29"), TODAY)
                        .gravid())
                .isFalse();
    }

    @Test
    void a_sign_before_her_last_litter_or_older_than_400_days_belongs_to_no_open_cycle() {
        var signs = List.of(
                sign(OVULATION, "2025-04-27"), // 400 days
                sign(OVULATION, "2025-04-28"),
                sign(POST_OVULATION_SHED, "2026-03-14"),
                sign(OVULATION, "2026-06-02"));

        assertThat(on(Cycle.of(LIVE_BEARING, signs, List.of(), TODAY))).containsExactly("2025-04-28", "2026-03-14");
        assertThat(on(Cycle.of(LIVE_BEARING, signs, births("2025-08-10"), TODAY)))
                .containsExactly("2026-03-14");
        // known to the year alone it may have been after the sign
        assertThat(on(Cycle.of(LIVE_BEARING, signs, births("2026"), TODAY))).isEmpty();
    }

    @Test
    void the_day_is_told_by_the_sign_that_is_dated_most_surely() {
        var ovulation = sign(OVULATION, "2026-02-24");
        var shed = sign(POST_OVULATION_SHED, "2026-03-14", SKIN_FOUND);
        var guess = sign(POST_OVULATION_SHED, "2026-03-10", GUESSED);

        assertThat(cycle(ovulation, shed).best()).hasValue(shed);
        assertThat(cycle(ovulation, guess).best()).hasValue(ovulation);
        assertThat(cycle(guess).best()).hasValue(guess);
        assertThat(cycle(sign(COPULATION, "2026-02-01")).best()).isEmpty();
    }

    @Test
    void labour_goes_on_until_its_end_or_a_litter_is_noted() {
        var shed = sign(POST_OVULATION_SHED, "2026-02-14");
        var started = sign(LABOUR_STARTED, "2026-05-29");

        assertThat(cycle(shed, started).state()).isEqualTo(State.IN_LABOUR);
        assertThat(cycle(shed, started).gravid()).isTrue();
        assertThat(cycle(shed, started, sign(LABOUR_FINISHED, "2026-05-29")).state())
                .isEqualTo(State.LABOUR_FINISHED);
        assertThat(Cycle.of(LIVE_BEARING, List.of(shed, started), births("2026-05-30"), TODAY)
                        .state())
                .isEqualTo(State.NOTHING_NOTED);
    }

    @Test
    void an_end_of_labour_after_midnight_still_belongs_to_the_litter() {
        var signs = List.of(
                sign(POST_OVULATION_SHED, "2026-02-14"),
                sign(LABOUR_STARTED, "2026-05-29"),
                sign(LABOUR_FINISHED, "2026-05-30"));

        assertThat(Cycle.of(LIVE_BEARING, signs, births("2026-05-29"), TODAY).state())
                .isEqualTo(State.NOTHING_NOTED);
    }

    @Test
    void an_egg_layer_is_gravid_until_she_lays_and_her_eggs_are_awaited_until_they_hatch() {
        var shed = sign(POST_OVULATION_SHED, "2026-03-14");
        var laid = sign(LAYING, "2026-04-20");

        assertThat(Cycle.of(EGG_LAYING, List.of(shed), List.of(), TODAY).gravid())
                .isTrue();
        var cycle = Cycle.of(EGG_LAYING, List.of(shed, laid), List.of(), TODAY);
        assertThat(cycle.gravid()).isFalse();
        assertThat(cycle.state()).isEqualTo(State.LAID);
        assertThat(cycle.best()).hasValue(laid);
    }

    @Test
    void the_interval_of_a_litter_is_counted_from_the_best_sign_of_its_own_cycle() {
        var signs = List.of(
                sign(POST_OVULATION_SHED, "2024-03-01"),
                sign(OVULATION, "2026-02-24"),
                sign(POST_OVULATION_SHED, "2026-03-14"));
        var births = births("2024-06-18", "2026-06-29");

        // 109 days and 107 days, counted by hand
        assertThat(births.stream().map(birth -> Cycle.interval(birth, LIVE_BEARING, signs, births)
                        .orElseThrow()
                        .days()))
                .containsExactly(109L, 107L);
        assertThat(Cycle.interval(births("2026-06").get(0), LIVE_BEARING, signs, births))
                .isEmpty();
    }

    private static Cycle cycle(Sign... signs) {
        return Cycle.of(LIVE_BEARING, List.of(signs), List.of(), TODAY);
    }

    private static List<String> on(Cycle cycle) {
        return cycle.signs().stream().map(sign -> sign.on().toString()).toList();
    }

    private static Sign sign(SignKind kind, String on) {
        return sign(kind, on, SEEN);
    }

    private static Sign sign(SignKind kind, String on, HowKnown howKnown) {
        return new Sign(UUID.randomUUID(), M013, kind, LocalDate.parse(on), null, howKnown, null);
    }

    private static List<Birth> births(String... born) {
        return Stream.of(born)
                .map(day -> new Birth(M013, UUID.randomUUID(), RoughDate.parse(day)))
                .toList();
    }

    /** Hours as the trade has them: WikiVet, dystocia of reptiles (abstract), has 48; 24 is common practice, no source. */
    @Test
    void labour_that_goes_on_is_prompted_after_24_and_48_hours_and_ends_in_a_veterinarian() {
        var labour = new Labour(Instant.parse("2026-06-29T02:00:00Z"));

        assertThat(labour.prompt(Instant.parse("2026-06-30T01:59:59Z"))).startsWith("Labour has started.");
        assertThat(labour.prompt(Instant.parse("2026-06-30T02:00:00Z"))).startsWith("Labour has gone on for 24 hours");
        assertThat(labour.prompt(Instant.parse("2026-07-01T01:59:59Z"))).startsWith("Labour has gone on for 24 hours");
        assertThat(labour.prompt(Instant.parse("2026-07-01T02:00:00Z"))).startsWith("Labour has gone on for 48 hours");
        for (var hours : List.of(0, 24, 48, 480)) {
            assertThat(labour.prompt(labour.startedAt().plusSeconds(hours * 3600L)))
                    .endsWith("see a reptile veterinarian.");
        }
    }
}
