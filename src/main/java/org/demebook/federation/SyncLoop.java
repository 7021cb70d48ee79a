package org.demebook.federation;

import io.quarkus.arc.All;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.ObservesAsync;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.demebook.peering.Node;
import org.demebook.peering.Peer;
import org.demebook.peering.PeerClient;
import org.demebook.peering.PeerTrouble;
import org.demebook.peering.Peers;
import org.demebook.protocol.Charter;
import org.demebook.protocol.Participant;
import org.jboss.logging.Logger;

/**
 * Keeps up with the other nodes: in every shared population each peer is asked about once a second, at once when it hints at something new,
 * and ever more seldom while it is away.
 */
@ApplicationScoped
class SyncLoop {
    private static final Logger LOG = Logger.getLogger(SyncLoop.class);
    private static final int WORKERS = 8;
    private static final long TURN_MILLIS = 250;
    private static final long LAST_SECONDS = 5;

    /** More in one answer is refused ({@link Participant#entries}). */
    static final int LARGEST_PAGE = 2_000;

    private record To(UUID population, String peer) {}

    private final Map<To, Link> links = new ConcurrentHashMap<>();
    private final AtomicBoolean looking = new AtomicBoolean();
    private final Set<UUID> toTell = ConcurrentHashMap.newKeySet();
    private final Map<UUID, List<Peer>> peersOf = new ConcurrentHashMap<>();

    @Inject
    Node node;

    @Inject
    Federations federations;

    @Inject
    Peers peers;

    @Inject
    PeerClient client;

    @Inject
    Fetching fetching;

    @Inject
    Opening opening;

    @Inject
    @All
    List<Regular> regulars;

    private ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(daemon("federation-clock"));
    private ExecutorService workers = Executors.newFixedThreadPool(WORKERS, daemon("federation-peer"));
    private ExecutorService looker = Executors.newSingleThreadExecutor(daemon("federation-regular"));
    private volatile boolean ending;

    private static ThreadFactory daemon(String name) {
        var number = new AtomicInteger();
        return work -> {
            var thread = new Thread(work, name + "-" + number.incrementAndGet());
            thread.setDaemon(true);
            return thread;
        };
    }

    /** After whoever may find that the server cannot start. */
    void started(@Observes @Priority(8_000) StartupEvent event) {
        if (node.isFederated()) {
            clock.scheduleWithFixedDelay(this::turn, TURN_MILLIS, TURN_MILLIS, TimeUnit.MILLISECONDS);
            clock.scheduleWithFixedDelay(this::lookAfter, 1_000, 1_000, TimeUnit.MILLISECONDS);
        }
    }

    void ended(@Observes ShutdownEvent event) {
        ending = true;
        clock.shutdownNow();
        looker.shutdown();
        workers.shutdown();
        try { // what has begun ends before the database does
            long until = System.nanoTime() + LAST_SECONDS * 1_000_000_000L;
            for (var all : List.of(clock, looker, workers)) {
                all.awaitTermination(until - System.nanoTime(), TimeUnit.NANOSECONDS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** That peer has something new of the population. */
    void hinted(UUID population, String peer) {
        var link = links.get(new To(population, peer));
        if (link != null) {
            link.wake(System.nanoTime());
            submit(workers, this::turn);
        }
    }

    /** This node has something new: whoever follows it is told, once for all that is written until then. */
    void written(@ObservesAsync Parts.Written written) {
        var population = written.population();
        if (toTell.add(population)) {
            submit(workers, () -> tell(population));
        }
    }

    private void tell(UUID population) {
        toTell.remove(population);
        try {
            peersOf.put(population, findPeers(population));
            for (var peer : peersIn(population)) {
                if (link(population, peer).beginsHint()) {
                    submit(workers, () -> hint(population, peer));
                }
            }
        } catch (RuntimeException e) {
            LOG.errorf(e, "nobody is told of what is new in %s", population);
        }
        settle(population);
    }

    /** When everything that a peer had of a population was here, the last time since this server started. */
    Optional<Instant> caughtUpAt(UUID population, String peer) {
        return Optional.ofNullable(links.get(new To(population, peer))).flatMap(Link::caughtUpAt);
    }

    private void hint(UUID population, Peer peer) {
        boolean another = true;
        while (another) {
            try {
                client.post(peer, "/federation/populations/%s/hint".formatted(population), new byte[0]);
            } catch (PeerTrouble trouble) {
                LOG.debugf("no hint to %s: %s", peer.name(), trouble.getMessage());
            } finally {
                another = link(population, peer).endedHint();
            }
        }
    }

    // ── rounds ───────────────────────────────────────────────────────────────────────────────────────────────────────

    private void turn() {
        try {
            for (var population : List.copyOf(peersOf.keySet())) {
                for (var peer : peersIn(population)) {
                    var link = link(population, peer);
                    if (link.begins(System.nanoTime())) {
                        submit(workers, () -> round(population, peer, link));
                    }
                }
            }
        } catch (RuntimeException e) {
            LOG.error("other nodes are not asked this time", e);
        }
    }

    private Link link(UUID population, Peer peer) {
        return links.computeIfAbsent(
                new To(population, peer.nodeId()), to -> new Link(LARGEST_PAGE, System.nanoTime()));
    }

    /** The active peers that take part, as they were found within the last second. */
    private List<Peer> peersIn(UUID population) {
        return peersOf.computeIfAbsent(population, this::findPeers);
    }

    private List<Peer> findPeers(UUID population) {
        var others = federations.reading(population, Participant::others);
        return peers.active().stream()
                .filter(peer -> others.contains(peer.nodeId()))
                .toList();
    }

    private void round(UUID population, Peer peer, Link link) {
        boolean well = false;
        try {
            int taken = 0;
            var part = new Fetching.Work() {
                @Override
                public <T> T with(Function<Participant, T> work) {
                    return federations.with(population, work);
                }
            };
            for (var journal : journalsToAskFor(population, peer)) {
                taken += fetching.fetch(part, population, peer, journal, link);
            }
            if (taken > 0) {
                settle(population);
            }
            peers.heardOf(peer.nodeId());
            well = true;
        } catch (PeerTrouble trouble) {
            peers.troubled(peer.nodeId(), String.valueOf(trouble.getMessage()));
        } catch (RuntimeException e) {
            LOG.errorf(e, "round with %s in %s", peer.name(), population);
        } finally {
            link.ended(well, System.nanoTime());
        }
    }

    /**
     * The peer's own; while fenced this node's, too; and those of nodes that cannot be asked themselves, are set aside, or have been away
     * for a while. What such a node told this one alone comes from others as a digest, and is asked for again once it is back.
     */
    private Set<String> journalsToAskFor(UUID population, Peer peer) {
        var reachable = peersIn(population).stream().collect(Collectors.toMap(Peer::nodeId, Function.identity()));
        return federations.reading(population, part -> {
            var journals = new LinkedHashSet<String>();
            if (part.awaited().contains(peer.nodeId())) {
                journals.add(node.identity().nodeId());
            }
            journals.add(peer.nodeId());
            for (var seat : part.charter().map(Charter::seats).orElse(List.of())) {
                var there = reachable.get(seat.node());
                if (there == null || link(population, there).isLongAway(System.nanoTime())) {
                    journals.add(seat.node());
                }
            }
            if (!part.awaited().contains(peer.nodeId())) {
                journals.remove(node.identity().nodeId());
            }
            return journals;
        });
    }

    private void settle(UUID population) {
        try {
            federations.with(population, part -> {
                part.settle();
                return true;
            });
        } catch (RuntimeException e) {
            LOG.errorf(e, "what follows in %s", population);
        }
    }

    // ── once a second ────────────────────────────────────────────────────────────────────────────────────────────────

    private void lookAfter() {
        if (looking.compareAndSet(false, true)) {
            submit(looker, () -> {
                try {
                    new HashSet<>(federations.shared()).forEach(this::lookAfter);
                } catch (RuntimeException e) {
                    LOG.error("shared populations are not looked after this time", e);
                } finally {
                    looking.set(false);
                }
            });
        }
    }

    private void lookAfter(UUID population) {
        if (ending) {
            return;
        }
        try {
            peersOf.put(population, findPeers(population));
            opening.open(population);
        } catch (RuntimeException e) {
            LOG.errorf(e, "%s is not looked after this time", population);
            return;
        }
        settle(population);
        for (var regular : regulars) {
            try {
                regular.tick(population);
            } catch (RuntimeException e) {
                LOG.errorf(e, "%s in %s", regular.getClass().getSimpleName(), population);
            }
        }
    }

    private static void submit(ExecutorService where, Runnable work) {
        try {
            where.execute(work);
        } catch (RejectedExecutionException e) {
            LOG.debug("the server ends", e);
        }
    }
}
