package org.demebook.keeper;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.Response;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.keycloak.admin.client.CreatedResponseUtil;
import org.keycloak.admin.client.Keycloak;
import org.keycloak.admin.client.resource.RealmResource;
import org.keycloak.representations.idm.GroupRepresentation;

/**
 * The groups in Keycloak that show who belongs to a population: {@code populations/CODE/member} and {@code
 * populations/CODE/coordinator}. They are a copy for other programs to read; nothing here is decided by them.
 *
 * <p>Every method calls Keycloak, waits for it, and throws what the client of JAX-RS throws when it does not answer.
 */
@ApplicationScoped
class KeycloakGroups {
    static final String REALM = "demebook";
    private static final String TOP = "populations";
    private static final int PAGE = 100;

    @Inject
    Keycloak keycloak;

    /**
     * Puts exactly these accounts into the group; does nothing where they are there. One call for the group, one for each
     * hundred who are in it, one for each who comes or goes.
     */
    void show(String populationCode, Role role, Set<String> subjects) {
        var realm = keycloak.realm(REALM);
        var groupId = group(realm, populationCode, role);
        var present = present(realm, groupId);
        for (var subject : subjects) {
            if (!present.contains(subject)) {
                put(realm, subject, groupId);
            }
        }
        for (var subject : present) {
            if (!subjects.contains(subject)) {
                take(realm, subject, groupId);
            }
        }
    }

    private static String group(RealmResource realm, String populationCode, Role role) {
        var population = TOP + "/" + populationCode;
        return at(realm, population + "/" + role.word()).orElseGet(() -> {
            var topId = at(realm, TOP).orElseGet(() -> make(realm, null, TOP, TOP));
            var populationId = at(realm, population).orElseGet(() -> make(realm, topId, populationCode, population));
            return make(realm, populationId, role.word(), population + "/" + role.word());
        });
    }

    private static Optional<String> at(RealmResource realm, String path) {
        try {
            return Optional.of(realm.getGroupByPath(path).getId());
        } catch (WebApplicationException refused) {
            requireGone(refused);
            return Optional.empty();
        }
    }

    private static String make(RealmResource realm, @Nullable String parentId, String name, String path) {
        var group = new GroupRepresentation();
        group.setName(name);
        try (var answer = parentId == null
                ? realm.groups().add(group)
                : realm.groups().group(parentId).subGroup(group)) {
            if (answer.getStatus() == Response.Status.CONFLICT.getStatusCode()) {
                return realm.getGroupByPath(path).getId(); // made by another server at the same moment
            }
            return CreatedResponseUtil.getCreatedId(answer);
        }
    }

    private static Set<String> present(RealmResource realm, String groupId) {
        var present = new HashSet<String>();
        for (int first = 0; ; first += PAGE) {
            var page = realm.groups().group(groupId).members(first, PAGE, true);
            page.forEach(user -> present.add(user.getId()));
            if (page.size() < PAGE) {
                return present;
            }
        }
    }

    private static void put(RealmResource realm, String subject, String groupId) {
        try {
            realm.users().get(subject).joinGroup(groupId);
        } catch (WebApplicationException refused) {
            requireGone(refused); // a keeper whose account was deleted there
        }
    }

    private static void take(RealmResource realm, String subject, String groupId) {
        try {
            realm.users().get(subject).leaveGroup(groupId);
        } catch (WebApplicationException refused) {
            requireGone(refused);
        }
    }

    // the client throws one class for every status
    private static void requireGone(WebApplicationException refused) {
        if (refused.getResponse().getStatus() != Response.Status.NOT_FOUND.getStatusCode()) {
            throw refused;
        }
    }
}
