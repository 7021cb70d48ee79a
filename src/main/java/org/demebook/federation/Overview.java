package org.demebook.federation;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.demebook.federation.Views.AlarmView;
import org.demebook.federation.Views.FederationView;
import org.demebook.federation.Views.GoneView;
import org.demebook.federation.Views.MissingReceipt;
import org.demebook.federation.Views.SharingNode;
import org.demebook.merkle.SignedCheckpoint;
import org.demebook.peering.NodeIdentity;
import org.demebook.peering.Peer;
import org.demebook.peering.Peers;
import org.demebook.protocol.Alarm;
import org.demebook.protocol.Charter;
import org.demebook.protocol.Participant;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/** How it stands with a shared population, for administrators. */
@ApplicationScoped
public class Overview {

    @Inject
    Federations federations;

    @Inject
    Peers peers;

    @Inject
    SyncLoop loop;

    @Inject
    DataSource database;

    @Inject
    ObjectMapper json;

    /** What one reading of the participant gave. */
    private record Seen(
            Optional<Charter> charter,
            boolean fenced,
            Set<String> awaited,
            SortedMap<String, Long> heads,
            SortedMap<Long, SortedSet<String>> missingReceipts,
            SortedMap<String, GoneView> gone,
            int alarms) {
        static Seen of(Participant part) {
            return new Seen(
                    part.charter(),
                    part.fenced(),
                    part.awaited(),
                    part.heads(),
                    part.missingReceipts(),
                    Adoption.gone(part),
                    part.alarms().size());
        }
    }

    @Transactional
    @WholeRegister
    public FederationView of(UUID population, String code) {
        var seen = federations.reading(population, Seen::of);
        var founder = FederatedPopulation.of(population).orElseThrow().founder;
        return new FederationView(
                population,
                code,
                founder,
                seen.fenced(),
                seen.awaited().stream().sorted().toList(),
                seen.charter().map(charter -> nodes(population, charter, seen)).orElse(List.of()),
                seen.missingReceipts().entrySet().stream()
                        .map(missing -> new MissingReceipt(missing.getKey(), List.copyOf(missing.getValue())))
                        .toList(),
                seen.alarms());
    }

    private List<SharingNode> nodes(UUID population, Charter charter, Seen seen) {
        var aside = AsideNode.of(population);
        var known = peers.all().stream().collect(Collectors.toMap(Peer::nodeId, Function.identity()));
        var heads = heads(population, charter);
        var me = federations.nodeId();
        var nodes = new ArrayList<SharingNode>();
        for (var seat : charter.seats()) {
            var id = seat.node();
            var peer = known.get(id);
            long entries = seen.heads().getOrDefault(id, 0L);
            var head = heads.get(id);
            var checked = head == null ? null : head.checked;
            nodes.add(new SharingNode(
                    id,
                    NodeIdentity.fingerprint(id),
                    seat.code(),
                    peer == null ? null : peer.name(),
                    id.equals(me),
                    aside.contains(id),
                    entries,
                    checked == null ? null : checked.text(),
                    checked == null ? 0 : checked.checkpoint().size(),
                    checked == null ? List.of() : checked.cosigners(),
                    head == null ? 0 : Math.max(0, head.furthest - entries),
                    id.equals(me) ? Long.valueOf(0) : secondsBehind(population, id),
                    seen.gone().get(id)));
        }
        return nodes;
    }

    private @Nullable Long secondsBehind(UUID population, String node) {
        return loop.caughtUpAt(population, node)
                .map(at -> Math.max(0, Duration.between(at, Instant.now()).toSeconds()))
                .orElse(null);
    }

    /** @param furthest the largest size that a head of it promises */
    private record Head(@Nullable SignedCheckpoint checked, long furthest) {}

    private Map<String, Head> heads(UUID population, Charter charter) {
        try (var connection = database.getConnection()) {
            var tables = new JournalTables(connection, population);
            var heads = new HashMap<String, Head>();
            for (var seat : charter.seats()) {
                var checked = tables.head(seat.node()).map(SignedCheckpoint::parse);
                long furthest = checked.map(note -> note.checkpoint().size()).orElse(0L);
                for (var text : tables.unchecked(seat.node())) {
                    furthest = Math.max(
                            furthest, SignedCheckpoint.parse(text).checkpoint().size());
                }
                heads.put(seat.node(), new Head(checked.orElse(null), furthest));
            }
            return heads;
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    public List<AlarmView> alarms(UUID population) {
        return federations.reading(population, Participant::alarms).stream()
                .map(this::view)
                .toList();
    }

    private AlarmView view(Alarm alarm) {
        return new AlarmView(
                alarm.id(),
                alarm.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                alarm.accused(),
                alarm.isProven(),
                alarm.sentence(),
                alarm.noticedAt(),
                alarm.evidence()
                        .map(evidence -> json.convertValue(evidence, new TypeReference<Map<String, Object>>() {}))
                        .orElse(null));
    }
}
