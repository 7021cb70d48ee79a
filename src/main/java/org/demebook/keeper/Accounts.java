package org.demebook.keeper;

import static org.demebook.problem.ProblemType.ALREADY_MEMBER;
import static org.demebook.problem.ProblemType.INVITATION_NOT_VALID;
import static org.demebook.problem.ProblemType.NAME_TAKEN;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.SIGN_IN_ELSEWHERE;
import static org.demebook.problem.ProblemType.WEAK_PASSWORD;
import static org.demebook.problem.ProblemType.WRONG_SIGN_IN;

import io.quarkus.elytron.security.common.BcryptUtil;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.security.UnauthorizedException;
import io.smallrye.jwt.build.Jwt;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.problem.Refusal;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.jwt.JsonWebToken;
import org.jspecify.annotations.Nullable;

/**
 * How keepers come in: invitations, accounts, tokens.
 *
 * <p>In the local way of sign-in, accounts are kept here. In the other one a Keycloak keeps them; a keeper appears here
 * when they come for the first time.
 */
@ApplicationScoped
public class Accounts {
    private static final Duration TOKEN_VALID = Duration.ofHours(8);
    private static final int SHORTEST_PASSWORD = 10;
    private static final int MOST_PASSWORD_BYTES = 72; // bcrypt reads no further
    // a hash of nothing, so that an unknown name takes as long as a wrong password
    private static final String NOBODY = BcryptUtil.bcryptHash(Secret.forLink());

    @Inject
    Keepers keepers;

    @Inject
    KeycloakKeepers keycloakKeepers;

    @Inject
    Journal journal;

    @Inject
    Clock clock;

    @ConfigProperty(name = "demebook.sign-in")
    String signIn;

    @ConfigProperty(name = "quarkus.oidc.token.issuer")
    Optional<String> issuer;

    @ConfigProperty(name = "demebook.administrator.password")
    Optional<String> administratorPassword;

    /** Gives a token for name and password; refuses with WRONG_SIGN_IN, whichever of the two is wrong. */
    public TokenView token(SignIn given) {
        return tokenFor(checked(given));
    }

    private Keeper checked(SignIn given) {
        requireLocal();
        var login = QuarkusTransaction.joiningExisting().call(() -> login(given.name()));
        // a hash takes a while: no connection is held meanwhile
        var matches = BcryptUtil.matches(
                given.password(), login.map(Login::passwordHash).orElse(NOBODY));
        if (!matches || login.isEmpty()) {
            throw new Refusal(WRONG_SIGN_IN, "Check both; after some wrong attempts you have to wait a while.");
        }
        return login.get().keeper();
    }

    /** The same for a browser, which keeps it for days. */
    public TokenView browserToken(SignIn given) {
        return tokenFor(checked(given), BrowserSession.VALID);
    }

    /** A fresh token for a browser whose own has grown old; empty where a Keycloak gives them. */
    @Transactional
    public Optional<TokenView> renewed(Asker by) {
        return isLocal()
                ? Optional.of(tokenFor(Keeper.<Keeper>findById(by.keeperId()), BrowserSession.VALID))
                : Optional.empty();
    }

    private record Login(Keeper keeper, String passwordHash) {}

    private static Optional<Login> login(String name) {
        return Keeper.named(name).flatMap(keeper -> Account.<Account>findByIdOptional(keeper.id)
                .map(account -> new Login(keeper, account.passwordHash)));
    }

    private TokenView tokenFor(Keeper keeper) {
        return tokenFor(keeper, TOKEN_VALID);
    }

    private TokenView tokenFor(Keeper keeper, Duration valid) {
        var token = Jwt.issuer(issuer.orElseThrow())
                .subject(keeper.subject)
                .preferredUserName(keeper.name)
                .groups(keeper.administrator ? Set.of("keeper", "administrator") : Set.of("keeper"))
                .expiresIn(valid)
                .sign();
        return new TokenView(token, "Bearer", valid.toSeconds(), keeper.name);
    }

    /** The keeper whose token this is; where Keycloak signs in, a new one is written down. */
    public Asker asker(JsonWebToken token, boolean administrator) {
        if (isLocal()) {
            return QuarkusTransaction.joiningExisting()
                    .call(() -> Keeper.withSubject(token.getSubject()).map(Keeper::asker))
                    .orElseThrow(UnauthorizedException::new);
        }
        return keycloakKeepers.seen(KeycloakPerson.of(token), administrator);
    }

    /**
     * Makes sure that the one who is to be admitted is known here, or else cannot be: where Keycloak keeps the accounts,
     * it is asked for somebody of that name. Not for a transaction: another server is called.
     */
    public void expect(Standing by, String name) {
        if (!isLocal()) {
            Keepers.requireCoordinator(by);
            keycloakKeepers.expect(name);
        }
    }

    /**
     * Makes the administrator of a fresh node, with the password that is configured or else a random one. Returns the
     * random one, to be told once; empty when there is nothing to tell.
     */
    @Transactional
    public Optional<String> firstAdministrator() {
        if (!isLocal() || Keeper.count() > 0) {
            return Optional.empty();
        }
        var password = administratorPassword.orElseGet(Secret::forLink);
        createLocal("administrator", "Administrator of this node", password, true);
        return administratorPassword.isPresent() ? Optional.empty() : Optional.of(password);
    }

    /** Invites somebody to this node, and to a population where a standing is given. The secret is shown this once. */
    @Transactional
    public InvitationView invite(Asker by, @Nullable Standing into, @Nullable Role role) {
        if (into == null && !by.administrator()) {
            throw new Refusal(NOT_ALLOWED, "Only an administrator invites to the node alone; name your population.");
        }
        if (into != null) {
            Keepers.requireCoordinator(into);
        }
        var secret = Secret.forLink();
        var invitation = new Invitation(
                secret,
                into == null ? null : into.populationId(),
                into == null ? null : role == null ? Role.MEMBER : role,
                by.keeperId(),
                Instant.now(clock));
        invitation.persist();
        return new InvitationView(secret, into == null ? null : into.populationCode(), invitation.expiresAt);
    }

    /** Opens an account with a one-time link. */
    @Transactional
    public TokenView accept(Acceptance acceptance) {
        requireLocal();
        var invitation = usable(acceptance.secret());
        var keeper = createLocal(acceptance.name(), acceptance.fullName(), acceptance.password(), false);
        use(invitation, keeper);
        return tokenFor(keeper);
    }

    /** Joins a population with a one-time link, for a keeper who is signed in already. */
    @Transactional
    public void accept(Asker by, String secret) {
        var invitation = usable(secret);
        if (invitation.populationId != null && keepers.belongs(invitation.populationId, by.keeperId())) {
            throw new Refusal(
                    ALREADY_MEMBER, "You belong to that population already; the link stays good for another.");
        }
        use(invitation, Keeper.findById(by.keeperId()));
    }

    /**
     * What an invitation is to, for whoever has its link; it stays good. Refuses with INVITATION_NOT_VALID.
     *
     * @return the population, and what the invited one will be in it; empty when it is to this node alone
     */
    @Transactional
    public Optional<InvitedTo> invitedTo(String secret) {
        var invitation = usable(secret);
        return Optional.ofNullable(invitation.populationId)
                .map(population -> new InvitedTo(population, Role.of(Objects.requireNonNull(invitation.role))));
    }

    /** What an invitation is to. */
    public record InvitedTo(UUID populationId, Role role) {}

    private Invitation usable(String secret) {
        return Invitation.locked(secret.strip())
                .filter(invitation -> invitation.usable(Instant.now(clock)))
                .orElseThrow(() -> new Refusal(
                        INVITATION_NOT_VALID,
                        "The link is mistyped, used or out of date; ask the one who sent it for a fresh one."));
    }

    private void use(Invitation invitation, Keeper keeper) {
        invitation.usedAt = Instant.now(clock);
        invitation.usedBy = keeper.id;
        if (invitation.populationId != null && invitation.role != null) {
            journal.open(invitation.populationId);
            keepers.join(invitation.populationId, invitation.invitedBy, keeper.id, Role.of(invitation.role));
        }
    }

    /** An account for a keeper who comes in by another one-time secret, such as a claim code. */
    @Transactional(TxType.MANDATORY)
    public Asker open(String name, String fullName, String password) {
        requireLocal();
        return createLocal(name, fullName, password, false).asker();
    }

    /** A token for a keeper whose identity was just established by {@link #open}. */
    @Transactional(TxType.MANDATORY)
    public TokenView tokenFor(Asker opened) {
        return tokenFor(Keeper.<Keeper>findById(opened.keeperId()));
    }

    private Keeper createLocal(String name, String fullName, String password, boolean administrator) {
        if (password.length() < SHORTEST_PASSWORD
                || password.getBytes(StandardCharsets.UTF_8).length > MOST_PASSWORD_BYTES
                || password.toLowerCase(Locale.ROOT).contains(name.toLowerCase(Locale.ROOT))) {
            throw new Refusal(
                    WEAK_PASSWORD,
                    "Take a password of %d to %d characters that does not contain your name."
                            .formatted(SHORTEST_PASSWORD, MOST_PASSWORD_BYTES));
        }
        var keeper = create(name, fullName, administrator);
        new Account(keeper.id, password).persist();
        return keeper;
    }

    private Keeper create(String name, String fullName, boolean administrator) {
        if (Keeper.named(name).isPresent()) {
            throw new Refusal(
                    NAME_TAKEN, "Somebody is called \"%s\" already; choose another sign-in name.".formatted(name));
        }
        var id = Journal.newId();
        var keeper = new Keeper(id, name.strip(), fullName.strip(), id.toString(), administrator, Instant.now(clock));
        keeper.persistAndFlush();
        return keeper;
    }

    /** Whether accounts and passwords are kept here; otherwise a Keycloak has them. */
    public boolean isLocal() {
        return signIn.equals("local");
    }

    private void requireLocal() {
        if (!isLocal()) {
            throw new Refusal(
                    SIGN_IN_ELSEWHERE, "Sign in where your accounts are kept and come back with the token of there.");
        }
    }
}
