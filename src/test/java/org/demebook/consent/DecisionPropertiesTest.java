package org.demebook.consent;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.UUID;
import org.demebook.Thorough;
import org.junit.jupiter.api.Test;

/** What holds of every decision, on random grants, animals and askers. */
class DecisionPropertiesTest {
    private static final long SEED = 4;
    private static final int WORLDS = Thorough.size("demebook.worlds", 60, 1_200);

    @Test
    void removing_a_grant_never_adds() {
        int taken = 0;
        for (int n = 0; n < WORLDS; n++) {
            var world = new RandomWorld(SEED + n, new UUID(1, n));
            var grants = world.grants(25);
            for (int question = 0; question < 200 && !grants.isEmpty(); question++) {
                var ask = ask(world);
                var fewer = new ArrayList<>(grants);
                fewer.remove(world.random.nextInt(fewer.size()));
                var with = ask.decide(grants);
                var without = ask.decide(fewer);
                assertThat(with.allowed() || !without.allowed())
                        .as("seed %d, question %d: %s", SEED + n, question, ask)
                        .isTrue();
                taken += with.allowed() && !without.allowed() ? 1 : 0;
            }
        }
        assertThat(taken).as("and sometimes takes something away").isGreaterThan(50);
    }

    @Test
    void a_decision_rests_on_one_live_grant_of_each_party_and_on_these_alone() {
        int resting = 0;
        for (int n = 0; n < WORLDS; n++) {
            var world = new RandomWorld(SEED + n, new UUID(1, n));
            var grants = world.grants(25);
            for (int question = 0; question < 200; question++) {
                var ask = ask(world);
                var decision = ask.decide(grants);
                if (decision.grantIds().isEmpty()) {
                    continue;
                }
                resting++;
                var named = grants.stream()
                        .filter(grant -> decision.grantIds().contains(grant.id()))
                        .toList();
                assertThat(named.stream().map(Grant::collectionId))
                        .as("seed %d, question %d: %s", SEED + n, question, ask)
                        .containsExactlyInAnyOrderElementsOf(
                                ask.animal().subject().parties());
                assertThat(ask.decide(named)).isEqualTo(decision);
                for (var grant : named) {
                    var fewer = new ArrayList<>(named);
                    fewer.remove(grant);
                    assertThat(ask.decide(fewer).allowed()).isFalse();
                }
            }
        }
        assertThat(resting).isGreaterThan(500);
    }

    @Test
    void a_lens_names_the_grants_of_its_decisions() {
        for (int n = 0; n < WORLDS; n++) {
            var world = new RandomWorld(SEED + n, new UUID(1, n));
            var grants = world.grants(25);
            grants.sort(Comparator.comparing(Grant::id));
            var ask = ask(world);
            var lens = new Lens(ask.audience(), ask.purpose(), RandomWorld.NOW, grants);
            var named = new HashSet<UUID>();
            for (var animal : world.animals) {
                for (var fieldGroup : FieldGroup.values()) {
                    var one = new Ask(ask.audience(), ask.purpose(), animal, fieldGroup, Action.READ);
                    assertThat(lens.may(animal.subject(), fieldGroup, Action.READ))
                            .isEqualTo(one.decide(grants).allowed());
                    named.addAll(one.decide(grants).grantIds());
                }
            }
            assertThat(lens.grantsUsed()).as("seed %d", SEED + n).isEqualTo(named);
        }
    }

    private record Ask(
            Audience audience, Purpose purpose, RandomWorld.Held animal, FieldGroup fieldGroup, Action action) {
        Decision decide(List<Grant> grants) {
            return Consents.decide(audience, purpose, animal.subject(), fieldGroup, action, RandomWorld.NOW, grants);
        }
    }

    private static Ask ask(RandomWorld world) {
        return new Ask(
                world.audience(),
                world.one(List.of(Purpose.values())),
                world.one(world.animals),
                world.one(List.of(FieldGroup.values())),
                world.one(List.of(Action.values())));
    }
}
