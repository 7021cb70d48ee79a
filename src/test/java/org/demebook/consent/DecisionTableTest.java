package org.demebook.consent;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.consent.PlainOracle.Asker;
import org.demebook.consent.PlainOracle.Line;
import org.demebook.keeper.Role;
import org.junit.jupiter.api.Test;

/**
 * The whole table of decisions, every row of it, against an oracle that was written apart: every field group × purpose ×
 * action × asker × state of a grant, and × recipient, × number of parties.
 */
class DecisionTableTest {
    private static final Instant NOW = Instant.parse("2026-11-28T09:00:00Z");
    private static final UUID POPULATION = id(1);
    private static final UUID ANIMAL = id(2);
    private static final UUID ANOTHER_ANIMAL = id(3);
    private static final Map<String, UUID> COLLECTIONS = Map.of("holder", id(10), "owner", id(11), "else", id(12));
    private static final Map<String, UUID> KEEPERS =
            Map.of("the member", id(20), "the keeper of another animal", id(21), "the one elsewhere", id(22));
    private static final List<String> RECIPIENTS = List.of(
            "public",
            "members",
            "coordinators",
            "the member",
            "the keeper of another animal",
            "the one elsewhere",
            "node H");
    private static final List<String> STATES = List.of("none", "not-yet", "live", "withdrawn", "expired", "superseded");

    private int rows;
    private int allowed;

    @Test
    void every_row_is_as_the_oracle_has_it_where_one_collection_has_a_say() {
        for (var to : RECIPIENTS) {
            for (var state : STATES) {
                // it covers half of everything, so that each word is asked for with and without
                var lines = state.equals("none") ? List.<Line>of() : List.of(half("holder", to, true, state));
                check("holder", lines);
            }
        }
        assertThat(rows).isEqualTo(7 * 6 * 9 * 10 * 6 * 4);
        assertThat(allowed).isBetween(rows / 10, rows / 2);
    }

    @Test
    void every_row_is_as_the_oracle_has_it_where_two_collections_have_a_say() {
        for (var ofHolder : STATES) {
            for (var ofOwner : STATES) {
                for (var to : List.of("public", "members", "the member")) {
                    var lines = new ArrayList<Line>();
                    if (!ofHolder.equals("none")) {
                        lines.add(half("holder", to, true, ofHolder));
                    }
                    if (!ofOwner.equals("none")) {
                        lines.add(all("owner", "members", ofOwner));
                    }
                    check("holder owner", lines);
                }
            }
        }
        assertThat(rows).isEqualTo(6 * 6 * 3 * 9 * 10 * 6 * 4);
    }

    @Test
    void a_grant_about_another_animal_or_of_another_collection_or_in_two_halves_allows_nothing() {
        check("holder", List.of(half("holder", "public", false, "live")));
        check("holder", List.of(all("else", "public", "live")));
        check("", List.of(all("holder", "public", "live"), all("owner", "public", "live")));
        check(
                "holder",
                List.of(
                        new Line("holder", "public", true, "identity", "research", "read", "live"),
                        new Line("holder", "public", true, "parentage", "transfer", "compute", "live")));
        assertThat(rows).as("nobody holds or owns what has no party").isEqualTo((3 * 9 + 7) * 10 * 6 * 4);
    }

    @Test
    void a_grant_holds_from_its_first_moment_on_and_at_its_last_no_longer() {
        var grant = grant(all("holder", "public", "live"), 0);
        assertThat(grant.state(grant.from().minusNanos(1))).isEqualTo(GrantState.NOT_YET);
        assertThat(grant.state(grant.from())).isEqualTo(GrantState.LIVE);
        assertThat(grant.state(grant.until().minusNanos(1))).isEqualTo(GrantState.LIVE);
        assertThat(grant.state(grant.until())).isEqualTo(GrantState.EXPIRED);
    }

    @Test
    void a_grant_that_came_to_several_ends_came_to_the_first() {
        var withdrawn = grant(all("holder", "public", "withdrawn"), 0);
        assertThat(withdrawn.state(NOW.minus(Duration.ofDays(1)).minusNanos(1))).isEqualTo(GrantState.LIVE);
        assertThat(withdrawn.state(NOW.minus(Duration.ofDays(1)))).isEqualTo(GrantState.WITHDRAWN);
        assertThat(withdrawn.state(withdrawn.until().plusSeconds(1))).isEqualTo(GrantState.WITHDRAWN);
        var ranOutThenReplaced =
                grant(withdrawn, withdrawn.until(), null, withdrawn.until().plusSeconds(5));
        assertThat(ranOutThenReplaced.state(withdrawn.until().plusSeconds(9))).isEqualTo(GrantState.EXPIRED);
        var replacedThenRanOut =
                grant(withdrawn, withdrawn.until(), null, withdrawn.until().minusSeconds(5));
        assertThat(replacedThenRanOut.state(withdrawn.until().plusSeconds(9))).isEqualTo(GrantState.SUPERSEDED);
    }

    private void check(String parties, List<Line> lines) {
        var grants = new ArrayList<Grant>();
        for (int i = 0; i < lines.size(); i++) {
            grants.add(grant(lines.get(i), i));
        }
        var subject = new Subject(
                ANIMAL,
                parties.isEmpty()
                        ? Set.of()
                        : Arrays.stream(parties.split(" "))
                                .map(COLLECTIONS::get)
                                .collect(Collectors.toSet()));
        for (var asker : askers(parties).entrySet()) {
            for (var purpose : Purpose.values()) {
                var lens = new Lens(asker.getValue(), purpose, NOW, grants);
                for (var fieldGroup : FieldGroup.values()) {
                    for (var action : Action.values()) {
                        var expected = PlainOracle.allows(
                                asker.getKey(), parties, fieldGroup.word(), purpose.word(), action.word(), lines);
                        var decision =
                                Consents.decide(asker.getValue(), purpose, subject, fieldGroup, action, NOW, grants);
                        if (decision.allowed() != expected
                                || lens.may(subject, fieldGroup, action) != expected
                                || !expected && !decision.grantIds().isEmpty()) {
                            throw new AssertionError(
                                    "%s for %s: %s of %s by %s, parties %s, grants %s: expected %s, was %s"
                                            .formatted(
                                                    action,
                                                    purpose,
                                                    fieldGroup,
                                                    ANIMAL,
                                                    asker.getKey(),
                                                    parties,
                                                    lines,
                                                    expected,
                                                    decision));
                        }
                        rows++;
                        allowed += expected ? 1 : 0;
                    }
                }
            }
        }
    }

    private static Map<Asker, Audience> askers(String parties) {
        var askers = new LinkedHashMap<Asker, Audience>();
        if (parties.contains("holder")) {
            askers.put(Asker.HOLDS_IT, member(id(30), "holder"));
        }
        if (parties.contains("owner")) {
            askers.put(Asker.OWNS_IT, member(id(31), "owner"));
        } else if (parties.contains("holder")) {
            // the same collection, by another of its keepers
            askers.put(Asker.OWNS_IT, member(id(32), "holder"));
        } else {
            askers.put(Asker.NODE_K, Audience.node(POPULATION, "K"));
        }
        askers.put(Asker.HOLDS_ANOTHER_ANIMAL, member(KEEPERS.get("the keeper of another animal"), "else"));
        askers.put(Asker.MEMBER, new Audience(POPULATION, KEEPERS.get("the member"), Role.MEMBER, Set.of()));
        askers.put(Asker.COORDINATOR, new Audience(POPULATION, id(33), Role.COORDINATOR, Set.of()));
        askers.put(
                Asker.SIGNED_IN_ELSEWHERE, new Audience(POPULATION, KEEPERS.get("the one elsewhere"), null, Set.of()));
        askers.put(Asker.NOT_SIGNED_IN, Audience.PUBLIC(POPULATION));
        askers.put(Asker.NODE_H, Audience.node(POPULATION, "H"));
        askers.put(Asker.NODE_K, Audience.node(POPULATION, "K"));
        if (parties.isEmpty()) {
            askers.put(Asker.HOLDS_ANOTHER_ANIMAL, member(KEEPERS.get("the keeper of another animal"), "holder"));
        }
        return askers;
    }

    private static Audience member(UUID keeperId, String collection) {
        return new Audience(POPULATION, keeperId, Role.MEMBER, Set.of(COLLECTIONS.get(collection)));
    }

    private static Line half(String party, String to, boolean thisAnimal, String state) {
        return new Line(
                party,
                to,
                thisAnimal,
                "identity custody fine-place breeding-results genetics",
                "record-keeping pedigree-view research",
                "read relay",
                state);
    }

    private static Line all(String party, String to, String state) {
        return new Line(party, to, true, words(FieldGroup.class), words(Purpose.class), words(Action.class), state);
    }

    private static <E extends Enum<E>> String words(Class<E> type) {
        return EnumSet.allOf(type).stream().map(Wording::word).collect(Collectors.joining(" "));
    }

    private static Grant grant(Line line, int n) {
        var to = line.to();
        var recipient =
                switch (to) {
                    case "public" -> Recipient.PUBLIC;
                    case "members" -> Recipient.MEMBERS;
                    case "coordinators" -> Recipient.COORDINATORS;
                    case "node H" -> Recipient.node("H");
                    default -> Recipient.keeper(KEEPERS.get(to));
                };
        var from = line.state().equals("not-yet") ? NOW.plusMillis(1) : NOW.minus(Duration.ofDays(3));
        var until = line.state().equals("expired") ? NOW : NOW.plus(Duration.ofDays(3));
        var yesterday = NOW.minus(Duration.ofDays(1));
        return new Grant(
                id(100 + n),
                COLLECTIONS.get(line.party()),
                id(40),
                recipient,
                line.thisAnimal()
                        ? n % 2 == 0 ? Scope.WHOLE_COLLECTION : Scope.animals(Set.of(ANIMAL, ANOTHER_ANIMAL))
                        : Scope.animals(Set.of(ANOTHER_ANIMAL)),
                Arrays.stream(line.fieldGroups().split(" "))
                        .map(FieldGroup::parse)
                        .collect(Collectors.toSet()),
                Arrays.stream(line.purposes().split(" ")).map(Purpose::parse).collect(Collectors.toSet()),
                Arrays.stream(line.actions().split(" ")).map(Action::parse).collect(Collectors.toSet()),
                from,
                until,
                null,
                "1",
                line.state().equals("withdrawn") ? yesterday : null,
                line.state().equals("superseded") ? yesterday : null);
    }

    private static Grant grant(Grant like, Instant until, Instant withdrawnAt, Instant supersededAt) {
        return new Grant(
                like.id(),
                like.collectionId(),
                like.givenBy(),
                like.recipient(),
                like.scope(),
                like.fieldGroups(),
                like.purposes(),
                like.actions(),
                like.from(),
                until,
                null,
                "1",
                withdrawnAt,
                supersededAt);
    }

    private static UUID id(int n) {
        return new UUID(0x7000, n);
    }
}
