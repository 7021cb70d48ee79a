package org.demebook.keeper;

import static org.demebook.problem.ProblemType.NO_SUCH_KEEPER;
import static org.demebook.problem.ProblemType.UNAVAILABLE;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.PersistenceException;
import jakarta.ws.rs.ProcessingException;
import jakarta.ws.rs.WebApplicationException;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.demebook.journal.Journal;
import org.demebook.problem.Refusal;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;
import org.keycloak.admin.client.Keycloak;
import org.keycloak.representations.idm.UserRepresentation;

/**
 * Keepers whose accounts are in a Keycloak. The row here follows the account: it is written at first sight, and its names
 * become those of the account whenever they are seen to differ.
 */
@ApplicationScoped
class KeycloakKeepers {
    private static final Logger LOG = Logger.getLogger(KeycloakKeepers.class);
    static final int LONGEST_NAME = 40;
    private static final int LONGEST_FULL_NAME = 100;
    // Keycloak takes no username with this character, so no account can be called like a name with it
    private static final String ASIDE = "~";

    @Inject
    Keycloak keycloak;

    @Inject
    Clock clock;

    /** The keeper with this account, who is here now. */
    Asker seen(KeycloakPerson person, boolean administrator) {
        return follow(person, administrator);
    }

    /**
     * Asks Keycloak for the account with a name, so that its keeper can be admitted before they come for the first time.
     * Refuses with NO_SUCH_KEEPER when there is none, with UNAVAILABLE when Keycloak does not answer and nobody of that
     * name was here before.
     */
    void expect(String name) {
        if (name.contains(ASIDE)) {
            return; // given here, unknown there
        }
        try {
            var person = account(name.strip());
            follow(person, null);
        } catch (ProcessingException | WebApplicationException failed) {
            LOG.warnf("Keycloak could not be asked for a user: %s", failed.getMessage());
            if (QuarkusTransaction.requiringNew().call(() -> Keeper.named(name)).isEmpty()) {
                throw new Refusal(
                        UNAVAILABLE,
                        "Keycloak, which knows whether there is a \"%s\", does not answer. Try again later, or send an invitation."
                                .formatted(name));
            }
        }
    }

    private KeycloakPerson account(String name) {
        List<UserRepresentation> found =
                keycloak.realm(KeycloakGroups.REALM).users().searchByUsername(name, true);
        return found.stream()
                .filter(UserRepresentation::isEnabled)
                .findFirst()
                .map(user -> new KeycloakPerson(user.getId(), user.getUsername(), fullName(user)))
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_KEEPER,
                        "Keycloak has no user called \"%s\"; ask them for their sign-in name.".formatted(name)));
    }

    private static @Nullable String fullName(UserRepresentation user) {
        var both = "%s %s"
                .formatted(
                        Objects.requireNonNullElse(user.getFirstName(), ""),
                        Objects.requireNonNullElse(user.getLastName(), ""))
                .strip();
        return both.isEmpty() ? null : both;
    }

    /** @param administrator null where the role was not seen: then it stays as it was */
    private Asker follow(KeycloakPerson person, @Nullable Boolean administrator) {
        try {
            return QuarkusTransaction.requiringNew().call(() -> written(person, administrator));
        } catch (PersistenceException sameAtTheSameMoment) {
            // the first two requests of a keeper came together, and the other one has written the row
            return QuarkusTransaction.requiringNew().call(() -> written(person, administrator));
        }
    }

    private Asker written(KeycloakPerson person, @Nullable Boolean administrator) {
        var keeper = Keeper.withSubject(person.subject()).orElseGet(() -> newcomer(person));
        if (person.username() != null && !name(person).equals(keeper.name)) {
            giveFree(name(person));
            keeper.name = name(person);
        }
        if (person.fullName() != null) {
            keeper.fullName = cut(person.fullName().strip(), LONGEST_FULL_NAME);
        }
        if (administrator != null) {
            keeper.administrator = administrator;
        }
        keeper.persistAndFlush();
        return keeper.asker();
    }

    private Keeper newcomer(KeycloakPerson person) {
        var name = name(person);
        giveFree(name);
        return new Keeper(Journal.newId(), name, name, person.subject(), false, Instant.now(clock));
    }

    /** A username belongs to one account: who has it here as well was called so once, and gets a name of their own. */
    private static void giveFree(String name) {
        Keeper.named(name).ifPresent(formerly -> {
            formerly.name = aside(formerly.name, formerly.subject);
            formerly.persistAndFlush();
        });
    }

    private static String name(KeycloakPerson person) {
        var username =
                Objects.requireNonNullElse(person.username(), person.subject()).strip();
        return username.length() <= LONGEST_NAME ? username : aside(username, person.subject());
    }

    /** A name that no other account has: as much of the username as there is room for, and a mark of the account. */
    private static String aside(String username, String subject) {
        var mark = ASIDE + Secret.hash(subject).substring(0, 8);
        return cut(username, LONGEST_NAME - mark.length()) + mark;
    }

    private static String cut(String text, int most) {
        if (text.length() <= most) {
            return text;
        }
        // not through the middle of a character
        return text.substring(0, Character.isHighSurrogate(text.charAt(most - 1)) ? most - 1 : most);
    }
}
