package org.demebook.telling;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.demebook.consent.Consents;
import org.demebook.consent.Lens;
import org.demebook.federation.Federations;
import org.demebook.federation.Regular;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Charter;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Saying;
import org.demebook.protocol.Statement.TellingsWithdrawn;
import org.demebook.protocol.Whereabouts;
import org.demebook.registry.Animals;
import org.demebook.registry.PedigreeRow;

/**
 * Has what stands told to other nodes equal what is granted: looks whenever an animal was touched, a grant began or ended, or a
 * node came or went. Works it out without holding the population, and anew while holding it where there is something to say: so
 * nothing is told that was withdrawn meanwhile. O(animals · nodes) where something moved.
 */
@ApplicationScoped
class Teller implements Regular {
    private static final int MOST_AT_ONCE = 500;
    private static final int MOST_WITHDRAWN_AT_ONCE = 1_000;

    /** @param head up to which animals were looked at */
    private record Looked(long head, Map<String, String> nodes, Set<Lens.Basis> basis) {}

    @Inject
    Federations federations;

    @Inject
    Animals animals;

    @Inject
    Consents consents;

    @Inject
    StandingTellings standing;

    @Inject
    Clock clock;

    private final Map<UUID, Looked> looked = new ConcurrentHashMap<>();

    @Override
    public void tick(UUID population) {
        var nodes = federations.reading(population, part -> part.fenced() ? Map.<String, String>of() : nodes(part));
        if (nodes.isEmpty() && !looked.containsKey(population)) {
            return; // fenced, or nobody else takes part
        }
        var at = clock.instant();
        var basis = Due.basis(population, nodes, consents, at);
        var before = looked.get(population);
        if (before != null && before.nodes.equals(nodes) && before.basis.equals(basis)) {
            var touched = new ArrayList<PedigreeRow>();
            long head = animals.changedSince(population, before.head, touched::add);
            if (touched.isEmpty()) {
                looked.put(population, new Looked(head, nodes, basis));
                return;
            }
        }
        long head;
        boolean more;
        do {
            var rows = new ArrayList<PedigreeRow>();
            head = animals.eachOf(population, rows::add);
            var due = new Due(population, rows, nodes, consents, clock.instant());
            more = !stands(population, due) && federations.with(population, part -> say(population, part));
        } while (more);
        looked.put(population, new Looked(head, nodes, basis));
    }

    /** The other nodes that are followed, with their codes. */
    private static Map<String, String> nodes(Participant part) {
        var codes = new HashMap<String, String>();
        var others = part.others();
        part.charter().map(Charter::seats).orElse(List.of()).forEach(seat -> {
            if (others.contains(seat.node())) {
                codes.put(seat.node(), seat.code());
            }
        });
        return codes;
    }

    private boolean stands(UUID population, Due due) {
        var ids = federations.animalIds(population);
        if (!due.named(ids).isEmpty()) {
            return false;
        }
        var tellings = federations.reading(population, part -> tellings(population, part, due, ids));
        return Difference.of(tellings, standing.of(population)).isNone();
    }

    private List<Telling> tellings(UUID population, Participant part, Due due, Map<UUID, AnimalId> ids) {
        var me = federations.nodeId();
        return due.tellings(
                ids,
                me,
                id -> part.whereabouts(id) instanceof Whereabouts.Held held
                        && held.node().equals(me),
                collection -> standing.custodian(population, collection));
    }

    /** While the population is held. Returns whether there is more to say. */
    private boolean say(UUID population, Participant part) {
        if (part.fenced()) {
            return false;
        }
        var rows = new ArrayList<PedigreeRow>();
        animals.eachOf(population, rows::add);
        var due = new Due(population, rows, nodes(part), consents, clock.instant());
        var ids = new HashMap<>(federations.animalIds(population));
        var unnamed = due.named(ids);
        unnamed.entrySet().stream()
                .limit(MOST_AT_ONCE)
                .forEach(named ->
                        ids.put(named.getKey(), federations.name(population, named.getValue(), named.getKey())));
        var tellings = tellings(population, part, due, ids);
        var difference = Difference.of(tellings, standing.of(population));
        withdraw(part, difference.withdrawn());
        var now = difference.said().stream().limit(MOST_AT_ONCE).toList();
        due.disclosed(now, ids, consents);
        var entries = part.write(now.stream().map(Telling::saying).toList());
        for (int i = 0; i < now.size(); i++) {
            standing.said(population, entries.get(i).seq(), now.get(i));
        }
        return difference.said().size() > now.size() || unnamed.size() > MOST_AT_ONCE;
    }

    private static void withdraw(Participant part, List<Long> seqs) {
        for (int from = 0; from < seqs.size(); from += MOST_WITHDRAWN_AT_ONCE) {
            int to = Math.min(seqs.size(), from + MOST_WITHDRAWN_AT_ONCE);
            part.write(List.of(Saying.toAll(new TellingsWithdrawn(List.copyOf(seqs.subList(from, to))))));
        }
    }
}
