package org.demebook.crossing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.federation.Consequence;
import org.demebook.federation.Federations;
import org.demebook.protocol.Entry;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Statement;

/**
 * Turns what became of hand-overs between nodes into facts of this register, in the transaction that brought it: the rows follow the
 * journals of the nodes, whatever was missed in between. So an own journal that comes back from other nodes after a restore from a
 * backup brings the crossings back that the backup lacks.
 */
@ApplicationScoped
class Follows implements Consequence {
    @Inject
    Federations federations;

    @Inject
    Giving giving;

    @Inject
    Receiving receiving;

    @Override
    public void follow(UUID population, Participant participant, List<Entry> entries) {
        var touched = new LinkedHashSet<UUID>();
        entries.forEach(entry -> transferOf(entry.says()).ifPresent(touched::add));
        if (touched.isEmpty()) {
            return;
        }
        var own = federations.nodeId();
        var transfers = participant.transfers();
        for (var id : touched) {
            var transfer = transfers.get(id);
            if (transfer != null && transfer.from().equals(own)) {
                giving.follow(population, transfer, participant);
            } else if (transfer != null && transfer.to().equals(own)) {
                receiving.follow(population, transfer, participant);
            }
        }
    }

    @Override
    public void forget(UUID population, Participant participant, String node, Collection<Long> seqs) {
        Crossing.<Crossing>list(
                        "populationId = ?1 and node = ?2 and not given and record is not null order by id",
                        population,
                        node)
                .forEach(crossing -> receiving.takeOut(crossing, participant));
    }

    private static Optional<UUID> transferOf(Statement says) {
        if (says instanceof Statement.Offered offered) {
            return Optional.of(offered.transfer());
        } else if (says instanceof Statement.RecordSent sent) {
            return Optional.of(sent.transfer());
        } else if (says instanceof Statement.Withdrawn withdrawn) {
            return Optional.of(withdrawn.transfer());
        } else if (says instanceof Statement.Accepted accepted) {
            return Optional.of(accepted.transfer());
        } else if (says instanceof Statement.Rejected rejected) {
            return Optional.of(rejected.transfer());
        } else if (says instanceof Statement.Released released) {
            return Optional.of(released.transfer());
        } else if (says instanceof Statement.Taken taken) {
            return Optional.of(taken.transfer());
        }
        return Optional.empty();
    }
}
