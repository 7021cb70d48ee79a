package org.demebook.telling;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Status;
import jakarta.transaction.Synchronization;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import org.demebook.consent.Grant;
import org.demebook.consent.GrantsElsewhere;
import org.demebook.federation.Consequence;
import org.demebook.federation.Federations;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Entry;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Told;
import org.demebook.protocol.Transfer;
import org.demebook.protocol.Whereabouts;
import org.demebook.registry.AnimalsElsewhere;
import org.demebook.registry.Elsewhere;

/** What other nodes told this one, as rows for figures and as grants; worked out anew after entries took effect or were erased. */
@ApplicationScoped
class ToldAnimals implements AnimalsElsewhere, GrantsElsewhere, Consequence {
    private static final int POPULATIONS_IN_MEMORY = 16;

    private record At(UUID population, long version) {}

    @Inject
    Federations federations;

    @Inject
    TransactionSynchronizationRegistry transactions;

    private final Map<UUID, AtomicLong> versions = new ConcurrentHashMap<>();
    private final Cache<At, ToldRows> kept =
            Caffeine.newBuilder().maximumSize(2 * POPULATIONS_IN_MEMORY).build();

    @Override
    public long version(UUID population) {
        var version = versions.get(population);
        return version == null ? 0 : version.get();
    }

    @Override
    public Elsewhere of(UUID population) {
        return rows(population).elsewhere();
    }

    @Override
    public List<Grant> grantsOf(UUID population) {
        return rows(population).grants();
    }

    ToldRows rows(UUID population) {
        var at = new At(population, version(population));
        var known = kept.getIfPresent(at);
        if (known == null) {
            known = read(at);
            kept.put(at, known);
        }
        return known;
    }

    private ToldRows read(At at) {
        if (!federations.isShared(at.population)) {
            return ToldRows.nothing(at.version);
        }
        var me = federations.nodeId();
        var records = new HashMap<AnimalId, UUID>();
        federations.animalIds(at.population).forEach((record, id) -> records.put(id, record));
        return federations.reading(at.population, part -> {
            var told = everything(part, me);
            var adopted = part.adopted();
            var holders = new HashMap<AnimalId, String>();
            told.holdings().keySet().forEach(id -> {
                if (part.whereabouts(id) instanceof Whereabouts.Held held) {
                    // an adopted animal is with its old keeper still, as far as figures go, until it stands in the
                    // register
                    holders.put(id, records.containsKey(id) ? held.node() : adopted.getOrDefault(id, held.node()));
                } else if (part.whereabouts(id) instanceof Whereabouts.InTransit transit) {
                    holders.put(id, transit.from());
                }
            });
            return part.charter()
                    .map(charter -> new ToldRows(at.version, me, told, part.claimedSame(), holders, records, charter))
                    .orElseGet(() -> ToldRows.nothing(at.version));
        });
    }

    /** All that is told to this node; of an adopted animal, until this node tells of it, what the node that is gone told. */
    static Told everything(Participant part, String me) {
        var told = preferring(part.told(says -> !Telling.isToEverybody(says)), part.told(Telling::isToEverybody));
        part.transfers().values().stream()
                .filter(transfer -> transfer.to().equals(me) && transfer.state() == Transfer.State.TAKEN)
                .sorted(Comparator.comparing(Transfer::id))
                .forEach(transfer ->
                        part.record(transfer.id()).ifPresent(record -> Handed.addTo(told.ancestry(), record)));
        part.adopted().forEach((id, gone) -> {
            if (!told.holdings().containsKey(id)) {
                part.holding(gone, id, says -> !Telling.isToEverybody(says))
                        .or(() -> part.holding(gone, id, Telling::isToEverybody))
                        .ifPresent(holding -> told.holdings().put(id, holding));
            }
        });
        return told;
    }

    /** Who may more than everybody is told so by an entry of its own, before or after the one for all. */
    private static Told preferring(Told own, Told everybody) {
        var ancestry = new TreeMap<>(everybody.ancestry());
        ancestry.putAll(own.ancestry());
        var holdings = new TreeMap<>(everybody.holdings());
        holdings.putAll(own.holdings());
        var inCircles = new TreeSet<>(everybody.inCircles());
        inCircles.addAll(own.inCircles());
        return new Told(ancestry, holdings, inCircles, own.sameAs());
    }

    // ── what changes it ──────────────────────────────────────────────────────────────────────────────────────────────

    @Override
    public void follow(UUID population, Participant participant, List<Entry> entries) {
        moveOn(population);
    }

    @Override
    public void forget(UUID population, Participant participant, String node, Collection<Long> seqs) {
        moveOn(population);
    }

    /** When the transaction that brought it holds: before that nobody else reads it. */
    void moveOn(UUID population) {
        transactions.registerInterposedSynchronization(new Synchronization() {
            @Override
            public void beforeCompletion() {
                // nothing is left to do
            }

            @Override
            public void afterCompletion(int status) {
                if (status == Status.STATUS_COMMITTED) {
                    versions.computeIfAbsent(population, any -> new AtomicLong())
                            .incrementAndGet();
                }
            }
        });
    }
}
