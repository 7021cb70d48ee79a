package org.demebook.keeper;

import io.quarkus.scheduler.Scheduled;
import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.TransactionPhase;
import jakarta.inject.Inject;
import jakarta.ws.rs.ProcessingException;
import jakarta.ws.rs.WebApplicationException;
import java.sql.SQLException;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import javax.sql.DataSource;
import org.demebook.keeper.KeeperFacts.MembershipChanged;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Shows in Keycloak's groups who belongs to which population, for other programs to read. The register decides: what is
 * changed in the groups by another hand is changed back.
 *
 * <p>A change is shown soon after its transaction, everything is compared now and then, and both happen on one thread of
 * their own: no request waits for Keycloak, and none notices when it is away.
 */
@ApplicationScoped
class MembershipMirror {
    private static final Logger LOG = Logger.getLogger(MembershipMirror.class);
    private static final String MEMBERSHIPS = """
            select h.code, m.role, k.subject
            from demebook.journal_head h
            left join demebook.membership m on m.population_id = h.population_id
            left join demebook.keeper k on k.id = m.keeper_id
            where ?::uuid is null or h.population_id = ?
            """;

    @Inject
    KeycloakGroups groups;

    @Inject
    DataSource database;

    @Inject
    MembershipMirror self; // so that the work has a request context: the client of Keycloak lives in one

    @ConfigProperty(name = "demebook.sign-in")
    String signIn;

    private final ExecutorService thread = Executors.newSingleThreadExecutor(work -> {
        var daemon = new Thread(work, "membership-mirror");
        daemon.setDaemon(true);
        return daemon;
    });
    private final Set<UUID> due = ConcurrentHashMap.newKeySet();
    private boolean reachable = true; // of the thread alone

    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) MembershipChanged change) {
        if (signIn.equals("keycloak") && due.add(change.populationId())) {
            thread.execute(() -> {
                due.remove(change.populationId()); // first, so that a change from here on is due again
                self.show(change.populationId());
            });
        }
    }

    @Scheduled(every = "${demebook.keycloak.mirror-every}", delayed = "5s")
    void compareEverything() {
        thread.execute(() -> self.show(null));
    }

    @PreDestroy
    void stop() {
        thread.shutdownNow();
    }

    /** @param populationId null for all populations of this node */
    @ActivateRequestContext
    void show(@Nullable UUID populationId) {
        try {
            memberships(populationId)
                    .forEach((code, subjectsOfRole) ->
                            subjectsOfRole.forEach((role, subjects) -> groups.show(code, role, subjects)));
            if (!reachable) {
                LOG.info("Keycloak's groups are kept again");
            }
            reachable = true;
        } catch (ProcessingException | WebApplicationException failed) {
            if (reachable) {
                LOG.warnf(
                        "Keycloak's groups cannot be kept just now: %s. Nothing else depends on them; it is tried again now and then.",
                        failed.getMessage());
            }
            reachable = false;
        } catch (SQLException | RuntimeException failed) {
            LOG.error("Keycloak's groups were not compared", failed); // or the thread would end without a word
        }
    }

    private Map<String, Map<Role, Set<String>>> memberships(@Nullable UUID populationId) throws SQLException {
        var memberships = new TreeMap<String, Map<Role, Set<String>>>();
        try (var connection = database.getConnection();
                var query = connection.prepareStatement(MEMBERSHIPS)) {
            query.setObject(1, populationId);
            query.setObject(2, populationId);
            try (var row = query.executeQuery()) {
                while (row.next()) {
                    var subjectsOfRole = memberships.computeIfAbsent(row.getString(1), code -> nobody());
                    if (row.getString(3) != null) {
                        subjectsOfRole.get(Role.of(row.getString(2))).add(row.getString(3));
                    }
                }
            }
        }
        return memberships;
    }

    private static Map<Role, Set<String>> nobody() {
        var subjectsOfRole = new EnumMap<Role, Set<String>>(Role.class);
        for (var role : Role.values()) {
            subjectsOfRole.put(role, new HashSet<>());
        }
        return subjectsOfRole;
    }
}
