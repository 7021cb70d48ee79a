package org.demebook.web.handover;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.vertx.core.http.HttpServerRequest;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import jakarta.ws.rs.core.UriInfo;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.demebook.keeper.Accounts;
import org.demebook.keeper.Asker;
import org.demebook.keeper.Attempts;
import org.demebook.keeper.BrowserSession;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Secret;
import org.demebook.keeper.SignIn;
import org.demebook.keeper.SignedIn;
import org.demebook.problem.Finding;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.transfer.Claim;
import org.demebook.transfer.Claims;
import org.demebook.web.Forms;
import org.demebook.web.FrameMessages;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jspecify.annotations.Nullable;

/**
 * Where a claim code leads: whoever got it with an animal takes its record over. Who has no account opens one with it, where
 * accounts are kept here, and is signed in from then on; where a Keycloak keeps them, one signs in first.
 */
@Path("/claim")
@Produces(Pages.HTML)
class ClaimPage {
    @CheckedTemplate(basePath = "web/handover", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance claim(List<Place> places, Typed typed);
    }

    /** A collection of the asker's, in one of their populations. */
    public record Place(String population, String label, UUID id) {}

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    SignedIn signedIn;

    @Inject
    Accounts accounts;

    @Inject
    Attempts attempts;

    @Inject
    Keepers keepers;

    @Inject
    Claims claims;

    @GET
    public Response open(@QueryParam("code") @Nullable String code) {
        if (signedIn.askerIfAny().isPresent() || !accounts.isLocal()) {
            visit.asker(); // who is not signed in is sent to do so, and comes back here
        }
        return pages.show(page(Typed.nothing().with("code", code == null ? null : Secret.asIssued(code))));
    }

    /** For who has an account and is not signed in: comes back to the code afterwards. */
    @GET
    @Path("signed-in")
    public Response signIn(@QueryParam("code") @Nullable String code) {
        visit.asker();
        var claim = UriBuilder.fromPath("/claim");
        return pages.goTo((code == null ? claim : claim.queryParam("code", Secret.asIssued(code)))
                .build()
                .toString());
    }

    @POST
    public Response claim(
            MultivaluedMap<String, String> form, @Context HttpServerRequest request, @Context UriInfo uri) {
        var asker = signedIn.askerIfAny();
        asker.ifPresent(someone -> visit.asker());
        var typed = Typed.of(form);
        var answer = forms.once(
                actor(asker, typed),
                typed,
                () -> {
                    var claim = forms.read(withAccount(typed, asker), Claim.class);
                    var claimed = attempts.counted(request, () -> claims.claim(asker.orElse(null), claim));
                    return "/populations/" + claimed.population() + "/animals/"
                            + claimed.animal().number();
                },
                this::page);
        var done = answer.getStatus() == Response.Status.SEE_OTHER.getStatusCode();
        return done && asker.isEmpty() ? signedIn(answer, typed, uri) : answer;
    }

    /** Who is not signed in opens an account; says what that needs in the words of the form. */
    private Typed withAccount(Typed typed, Optional<Asker> asker) {
        var missing = Stream.of("name", "fullName", "password")
                .filter(field -> asker.isEmpty() && typed.text(field) == null)
                .map(field -> Finding.error(
                        field, null, pages.words(ClaimMessages.class).neededForAccount()))
                .toList();
        if (!missing.isEmpty()) {
            throw new Refusal(
                    ProblemType.INVALID_VALUES, pages.words(FrameMessages.class).lookAtFields(), missing);
        }
        return typed;
    }

    /** Where nobody is signed in yet, the code itself says whose key this is. */
    private static UUID actor(Optional<Asker> asker, Typed typed) {
        return asker.map(Asker::keeperId)
                .orElseGet(() -> UUID.nameUUIDFromBytes(
                        Secret.asIssued(typed.value("code")).getBytes(StandardCharsets.UTF_8)));
    }

    private Response signedIn(Response answer, Typed typed, UriInfo uri) {
        var opened =
                new SignIn(Objects.requireNonNull(typed.text("name")), Objects.requireNonNull(typed.text("password")));
        var token = accounts.browserToken(opened);
        var secure = uri.getBaseUri().getScheme().equals("https");
        return Response.fromResponse(answer)
                .cookie(BrowserSession.cookie(token, secure))
                .build();
    }

    private TemplateInstance page(Typed typed) {
        return Templates.claim(places(), typed);
    }

    /** Only who has several collections in a population has to say which. */
    private List<Place> places() {
        if (!visit.isSignedIn()) {
            return List.of();
        }
        var places = new ArrayList<Place>();
        for (var population : visit.getPopulations()) {
            var own = keepers.collections(signedIn.standing(population.code()));
            if (own.size() > 1) {
                own.forEach(
                        collection -> places.add(new Place(population.name(), collection.label(), collection.id())));
            }
        }
        return places;
    }
}
