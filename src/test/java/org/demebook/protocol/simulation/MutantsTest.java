package org.demebook.protocol.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Optional;
import java.util.Set;
import org.demebook.protocol.FeedPage;
import org.demebook.protocol.Kept;
import org.junit.jupiter.api.Test;

/** That the simulation can fail: a part that errs in one way is caught by the rule that it breaks. */
class MutantsTest {
    private static final int MOST_SEEDS = 400;

    @Test
    void a_disk_that_loses_a_committed_change_breaks_a_promise() {
        assertCaught(Set.of("I4", "I3"), new World.Parts() {
            @Override
            SimDisk disk(World world, int node) {
                return new SimDisk(world.written::add) {
                    private int changes;

                    @Override
                    void keep(State changed) {
                        if (++changes % 20 != 0) {
                            super.keep(changed);
                        }
                    }
                };
            }
        });
    }

    @Test
    void a_disk_that_keeps_what_was_to_be_erased_breaks_its_receipt() {
        assertCaught(Set.of("I8"), new World.Parts() {
            @Override
            SimDisk disk(World world, int node) {
                return new SimDisk(world.written::add) {
                    @Override
                    public void erase(String journal, Collection<Long> seqs) {
                        // keeps it
                    }
                };
            }
        });
    }

    @Test
    void a_node_that_does_not_wait_after_a_restore_contradicts_itself() {
        assertCaught(Set.of("I1", "I3", "I4", "I11"), new World.Parts() {
            @Override
            Conditions conditions(Dice dice) {
                return new Conditions(3, 0, 0, 1, 0.1, 0.3, 0, false, 0, 0, false, true, false, 200);
            }

            @Override
            SimNode node(World world, int number, String name, SimDisk disk, SimClock clock) {
                return new SimNode(world, number, name, disk, clock) {
                    @Override
                    void start() {
                        super.start();
                        var others = participant().others();
                        others.forEach(other -> participant().setAside(other, true));
                        participant().fenced();
                        others.forEach(other -> participant().setAside(other, false));
                    }
                };
            }
        });
    }

    @Test
    void a_network_that_hands_on_answers_to_what_was_asked_before_a_restart_breaks_the_fence() {
        assertCaught(Set.of("I1", "I3", "I4", "I11"), new World.Parts() {
            @Override
            Conditions conditions(Dice dice) {
                return new Conditions(3, 0, 0.5, 240, 0.1, 0.5, 0, false, 0, 0, false, false, false, 300);
            }

            @Override
            SimNetwork network(World world, Dice dice, Conditions conditions) {
                return new SimNetwork(world, dice, conditions) {
                    @Override
                    boolean reaches(SimNode asker, int start) {
                        return true;
                    }
                };
            }
        });
    }

    @Test
    void a_node_that_gives_everything_to_everybody_is_caught() {
        assertCaught(Set.of("I7"), new World.Parts() {
            @Override
            SimNode node(World world, int number, String name, SimDisk disk, SimClock clock) {
                return new SimNode(world, number, name, disk, clock) {
                    @Override
                    FeedPage give(String asker, String journal, long after, int most) {
                        return withEveryBody(disk, super.give(asker, journal, after, most));
                    }
                };
            }
        });
    }

    private static FeedPage withEveryBody(SimDisk disk, FeedPage page) {
        var items = new ArrayList<FeedPage.Item>();
        for (int i = 0; i < page.items().size(); i++) {
            var kept = disk.entry(page.node(), page.after() + i + 1).orElseThrow();
            items.add(kept.entry().isPresent() ? body(kept) : page.items().get(i));
        }
        return new FeedPage(
                page.node(),
                page.after(),
                page.keys(),
                page.head(),
                items,
                page.fromStart(),
                page.fromEnd(),
                page.heads(),
                page.highest(),
                page.alarms());
    }

    private static FeedPage.Item body(Kept kept) {
        return new FeedPage.Item(kept.entry(), kept.salt(), Optional.empty());
    }

    private static void assertCaught(Set<String> rules, World.Parts parts) {
        for (long seed = 1; seed <= MOST_SEEDS; seed++) {
            try {
                new World(seed, parts).run();
            } catch (BrokenRule caught) {
                assertThat(caught.rule()).as(caught.getMessage()).isIn(rules);
                return;
            }
        }
        throw new AssertionError("not caught in " + MOST_SEEDS + " worlds");
    }
}
