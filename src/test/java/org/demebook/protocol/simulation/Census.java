package org.demebook.protocol.simulation;

import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.demebook.protocol.Statement;

/** Counts what is written in journals. */
final class Census {
    private static final Map<Class<? extends Statement>, Happening> PLAIN = Map.ofEntries(
            Map.entry(Statement.AnimalEntered.class, Happening.ENTERED),
            Map.entry(Statement.Offered.class, Happening.OFFERED),
            Map.entry(Statement.Accepted.class, Happening.ACCEPTED),
            Map.entry(Statement.Rejected.class, Happening.REJECTED),
            Map.entry(Statement.Released.class, Happening.RELEASED),
            Map.entry(Statement.Taken.class, Happening.TAKEN),
            Map.entry(Statement.GoneStated.class, Happening.HEIR_NAMED),
            Map.entry(Statement.Adopted.class, Happening.ADOPTED),
            Map.entry(Statement.TellingsWithdrawn.class, Happening.TELLING_WITHDRAWN),
            Map.entry(Statement.Purged.class, Happening.PURGED),
            Map.entry(Statement.SameAnimalClaimed.class, Happening.CLAIMED),
            Map.entry(Statement.SameAnimalConfirmed.class, Happening.CONFIRMED),
            Map.entry(Statement.SameAnimalReversed.class, Happening.REVERSED),
            Map.entry(Statement.KeysChanged.class, Happening.KEYS_CHANGED));

    private final World world;

    Census(World world) {
        this.world = world;
    }

    void count(SimNode author, Statement says) {
        happening(author, says).ifPresent(world.story::count);
    }

    private Optional<Happening> happening(SimNode author, Statement says) {
        if (says instanceof Statement.Withdrawn it) {
            if (isAnswered(it.transfer())) {
                world.story.count(Happening.WITHDRAWN_AFTER_ACCEPTANCE);
            } else if (isExpired(author, it.transfer())) {
                world.story.count(Happening.EXPIRED);
            }
            return Optional.of(Happening.WITHDRAWN);
        }
        if (says instanceof Statement.AncestryTold it) {
            boolean across =
                    it.dam().filter(dam -> !dam.node().equals(author.id)).isPresent()
                            || it.sires().stream()
                                    .anyMatch(sire -> !sire.sire().node().equals(author.id));
            return across ? Optional.of(Happening.BORN_ACROSS_NODES) : Optional.empty();
        }
        return Optional.ofNullable(PLAIN.get(says.getClass()));
    }

    private boolean isAnswered(UUID transfer) {
        return said().anyMatch(says ->
                says instanceof Statement.Accepted it && it.transfer().equals(transfer));
    }

    private boolean isExpired(SimNode author, UUID transfer) {
        return said().anyMatch(says -> says instanceof Statement.Offered it
                && it.transfer().equals(transfer)
                && !author.clock.now().isBefore(it.expiresAt()));
    }

    private Stream<Statement> said() {
        return world.nodes.stream()
                .flatMap(node -> world.chronicle.journal(node.id).stream())
                .flatMap(kept -> world.says(kept).stream());
    }
}
