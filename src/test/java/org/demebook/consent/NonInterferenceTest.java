package org.demebook.consent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.consent.FieldGroup.BREEDING_RESULTS;
import static org.demebook.consent.FieldGroup.CUSTODY;
import static org.demebook.consent.FieldGroup.HEALTH;
import static org.demebook.consent.FieldGroup.IDENTITY;
import static org.demebook.consent.FieldGroup.MARKS_AND_PHOTOS;
import static org.demebook.consent.FieldGroup.NOTES;
import static org.demebook.consent.FieldGroup.PARENTAGE;
import static org.demebook.consent.Heard.answer;
import static org.demebook.consent.Heard.body;
import static org.demebook.consent.Heard.leaves;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.demebook.Colony;
import org.demebook.consent.Neighbourhood.Change;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/**
 * What is denied cannot be told from what is answered: the asker's answers are a function of what was granted alone. After Goguen
 * and Meseguer, <i>Security Policies and Security Models</i>, 1982 (non-interference; the idea from memory, the paper was not read
 * for it): what one side does in secret changes nothing that the other side observes.
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class NonInterferenceTest {
    private static final long SEED = Long.getLong("demebook.noninterference.seed", 20_261_128);
    private static final int WORLDS = Integer.getInteger("demebook.noninterference.worlds", 4);
    private static final int ASKED_EACH_TIME = 30;
    private static final int WITHDRAWALS = WORLDS;
    private static final List<String> ASKERS = List.of(INES, WREN);
    private static final List<FieldGroup> GROUPS =
            List.of(IDENTITY, PARENTAGE, MARKS_AND_PHOTOS, CUSTODY, HEALTH, NOTES, BREEDING_RESULTS);

    /** Figures that rest on ancestors: with fewer of them they change. What they change to is held against the first answers. */
    private static final Set<String> FIGURES = Set.of(
            "inbreedingCoefficient",
            "inbreedingIfUnknownAreSiblings",
            "inbreedingIfDoubtfulSiresUnknown",
            "inbreedingOfYoung",
            "knownAncestry",
            "contribution",
            "unnamedContribution",
            "kinship",
            "ifUnknownAreSiblings",
            "ifDoubtfulSiresUnknown",
            "meanKinship",
            "geneDiversity",
            "geneDiversityNow",
            "geneDiversityOfKnownGenes",
            "geneDiversityIfUnknownAreSiblings",
            "founderGenomeEquivalents",
            "effectiveFounders",
            "keep",
            "reason",
            // of a line that ends sooner
            "certainty",
            "lines",
            "notEstablished",
            "sentence",
            "mixed",
            // a recommendation: a partner that is not shown any more is said to be that
            "words",
            // said of a figure as soon as an ancestor behind it is not shown
            "throughAncestorsNotShown");

    /** An ancestor whose parents are not shown any more becomes a founder: its number stood elsewhere in the answer. */
    private static final Set<String> MOVED = Set.of(".founders[].animal");

    /** Counts may fall. */
    private static final Set<String> COUNTS = Set.of(".living", ".sides", ".answered");

    private final Random random = new Random(SEED);
    private final List<String> noticed = new ArrayList<>();

    @Test
    void what_is_denied_may_change_and_no_byte_status_etag_order_or_count_does() {
        var shown = EnumSet.noneOf(FieldGroup.class);
        int denied = 0;
        for (int world = 0; world < WORLDS; world++) {
            var neighbourhood = new Neighbourhood(random);
            var asker = ASKERS.get(world % ASKERS.size());
            var granted = granted(world);
            if (!granted.isEmpty()) {
                neighbourhood.give(List.copyOf(granted), purposes(), List.of(Action.READ, Action.COMPUTE));
            }
            var addresses = neighbourhood.addresses(asker);
            var secret = new ArrayList<Change>();
            for (var change : neighbourhood.changes()) {
                if (!isShown(change, granted)) {
                    secret.add(change);
                    continue;
                }
                if (shown.contains(change.fieldGroup()) || change.fieldGroup() == BREEDING_RESULTS) {
                    change.make().run();
                    continue;
                }
                var before = ask(asker, addresses);
                change.make().run();
                if (!ask(asker, addresses).equals(before)) {
                    shown.add(change.fieldGroup());
                }
            }
            var answers = ask(asker, addresses);
            Collections.rotate(secret, world * 5);
            var since = new ArrayList<String>();
            for (var change : secret) {
                since.add(change.name());
                change.make().run();
                denied++;
                for (var address : some(addresses)) {
                    compare(asker, granted, since, address, answers, answer(asker, address));
                }
            }
            var last = ask(asker, addresses);
            for (var address : addresses) {
                compare(asker, granted, since, address, answers, last.get(address));
            }
        }
        assertThat(noticed).as("seed %d", SEED).isEmpty();
        // a granted change does show, or there would be nothing to see; that of a litter in more than there is here,
        // see below
        assertThat(shown)
                .containsAll(GROUPS.stream()
                        .filter(group -> group != BREEDING_RESULTS)
                        .toList());
        assertThat(denied).isGreaterThan(40);
    }

    /** Nobody reads a litter of somebody else's; where it is granted, one's own is compared with those of three collections and more. */
    @Test
    void what_came_of_a_litter_shows_in_comparisons_where_it_is_granted_and_in_no_byte_before() {
        var colony = Colony.foundPrivate();
        colony.share(WREN, "open-pedigree");
        var own = litter(colony, INES);
        litter(colony, INES);
        litter(colony, WREN);
        var dovs = litter(colony, DOV);
        for (int i = 0; i < 8; i++) {
            litter(colony, DOV);
        }
        var reading = colony.path("/litters/" + own + "/reading");
        var hidden = answer(INES, reading);
        outcome(colony, dovs, 7);
        assertThat(answer(INES, reading)).isEqualTo(hidden);
        colony.share(DOV, "open-pedigree");
        var granted = answer(INES, reading);
        outcome(colony, dovs, 20);
        assertThat(answer(INES, reading)).isNotEqualTo(granted).isNotEqualTo(hidden);
        assertThat(Colony.as(INES).get(colony.path("/litters/" + dovs)).statusCode())
                .isEqualTo(404);
    }

    private static String litter(Colony colony, String keeper) {
        var litter = new HashMap<>(Neighbourhood.counts(1));
        litter.putAll(Map.of("dam", colony.female(keeper), "born", "2024-06-29"));
        return colony.post(keeper, "/litters", litter).statusCode(201).extract().path("litter.id");
    }

    private static void outcome(Colony colony, String litter, int unfertilised) {
        Neighbourhood.correct(colony.path("/litters/" + litter), unfertilised);
    }

    @Test
    void what_is_withdrawn_leaves_the_answers_as_they_were_before_it_was_granted_and_adds_nothing() {
        int changed = 0;
        for (var asker : ASKERS) {
            var neighbourhood = new Neighbourhood(random);
            neighbourhood.give(some(), purposes(), List.of(Action.READ));
            var addresses = neighbourhood.addresses(asker);
            var before = ask(asker, addresses);
            for (int i = 0; i < WITHDRAWALS; i++) {
                var grant = neighbourhood.give(some(), purposes(), i % 3 == 0 ? compute() : read());
                var between = ask(asker, addresses);
                neighbourhood.withdraw(grant);
                var after = ask(asker, addresses);
                for (var address : addresses) {
                    compare(
                            asker,
                            Set.of(),
                            List.of("what was given and withdrawn"),
                            address,
                            before,
                            after.get(address));
                    lookForAdded(asker, address, between.get(address), after.get(address));
                }
                changed += between.equals(after) ? 0 : 1;
            }
        }
        assertThat(noticed).as("seed %d", SEED).isEmpty();
        assertThat(changed).as("grants that showed something").isGreaterThan(WITHDRAWALS / 2);
    }

    // ── what is granted ──────────────────────────────────────────────────────────────────────────────────────────────

    /** In turn nothing, all, and a choice in which the animals themselves are mostly to be seen. */
    private Set<FieldGroup> granted(int world) {
        if (world == 0) {
            return Set.of();
        }
        var granted = EnumSet.copyOf(some());
        if (world % 4 != 3) {
            granted.add(IDENTITY);
        }
        return world == 1 ? EnumSet.copyOf(GROUPS) : granted;
    }

    private List<FieldGroup> some() {
        var some = new ArrayList<FieldGroup>();
        while (some.isEmpty()) {
            GROUPS.stream().filter(group -> random.nextBoolean()).forEach(some::add);
        }
        return some;
    }

    /** What is granted for any purpose counts as granted. */
    private List<Purpose> purposes() {
        return random.nextBoolean()
                ? List.of(Purpose.PEDIGREE_VIEW, Purpose.PAIRING_COMPUTATION)
                : List.of(Purpose.PEDIGREE_VIEW);
    }

    private static List<Action> read() {
        return List.of(Action.READ, Action.COMPUTE);
    }

    private static List<Action> compute() {
        return List.of(Action.COMPUTE);
    }

    private static boolean isShown(Change change, Set<FieldGroup> granted) {
        return change.fieldGroup() != null && granted.contains(IDENTITY) && granted.contains(change.fieldGroup());
    }

    // ── what is answered ─────────────────────────────────────────────────────────────────────────────────────────────

    private List<String> some(List<String> addresses) {
        var chosen = new TreeSet<String>();
        while (chosen.size() < ASKED_EACH_TIME) {
            chosen.add(addresses.get(random.nextInt(addresses.size())));
        }
        return List.copyOf(chosen);
    }

    private static Map<String, String> ask(String asker, List<String> addresses) {
        var answers = new LinkedHashMap<String, String>();
        addresses.forEach(address -> answers.put(address, answer(asker, address)));
        return answers;
    }

    /** Writes down what the asker can tell; they are taken to know it from then on. */
    private void compare(
            String asker,
            Set<FieldGroup> granted,
            List<String> changes,
            String address,
            Map<String, String> answers,
            String now) {
        var before = answers.put(address, now);
        if (!now.equals(before)) {
            noticed.add("%s, asking %s with %s granted, notices one of %s:%n%s%n%s"
                    .formatted(asker, address, granted, changes, before, now));
        }
    }

    /** Each leaf of the later answer, whatever its place in a list, was in the earlier one; but for the figures. */
    private void lookForAdded(String asker, String address, String earlier, String later) {
        if (!later.startsWith("200")
                || !body(later).startsWith("{") && !body(later).startsWith("[")) {
            return;
        }
        if (address.endsWith("?limit=1")) {
            return; // what is listed next moves up
        }
        var had = leaves(earlier);
        leaves(later).forEach((path, values) -> {
            var field = path.substring(path.lastIndexOf('.') + 1);
            var right = COUNTS.contains(path)
                    ? highest(values) <= highest(had.getOrDefault(path, Set.of()))
                    : MOVED.contains(path)
                            ? values.stream().allMatch(value -> body(earlier).contains('"' + value + '"'))
                            : FIGURES.contains(field)
                                    || had.getOrDefault(path, Set.of()).containsAll(without(path, values));
            if (!right) {
                noticed.add("%s, asking %s: %s was %s and is %s after a grant was withdrawn"
                        .formatted(asker, address, path, had.get(path), values));
            }
        });
    }

    /** A sire that is not shown any more reads as one that is not known. */
    private static Set<String> without(String path, Set<String> values) {
        if (!path.endsWith(".sire.kind")) {
            return values;
        }
        var told = new HashSet<>(values);
        told.remove("unknown");
        return told;
    }

    private static int highest(Set<String> values) {
        return values.stream().mapToInt(Integer::parseInt).max().orElse(0);
    }
}
