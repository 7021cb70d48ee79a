package org.demebook.web.members;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.function.Supplier;
import org.demebook.keeper.Accounts;
import org.demebook.keeper.CollectionView;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.MemberView;
import org.demebook.keeper.NewCollection;
import org.demebook.keeper.NewRegions;
import org.demebook.keeper.Regions;
import org.demebook.keeper.RegionsView;
import org.demebook.keeper.Role;
import org.demebook.keeper.Standing;
import org.demebook.registry.PopulationView;
import org.demebook.registry.Populations;
import org.demebook.web.Forms;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;

/** Members, collections and regions of a population. */
@Path("/populations/{population}")
@Produces(Pages.HTML)
class MembersPage {
    /** Which form it was that is shown again; the others are as they are opened. */
    private static final String FORM = "form";

    @CheckedTemplate(basePath = "members", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance members(
                PopulationView about,
                List<MemberView> members,
                List<CollectionView> collections,
                RegionsView regions,
                List<DistanceRow> distances,
                long distancesRevision,
                List<Option> roles,
                List<Option> regionChoices,
                Shown shown);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Keepers keepers;

    @Inject
    Accounts accounts;

    @Inject
    InvitationsPage invitations;

    @Inject
    Regions regions;

    @Inject
    Populations populations;

    @GET
    @Path("members")
    public Response members(@RestPath String population) {
        return pages.show(page(visit.in(population), "", Typed.nothing()));
    }

    @POST
    @Path("members")
    public Response admit(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.attempt(
                typed,
                () -> {
                    var member = forms.read(typed, MemberView.class, FORM);
                    accounts.expect(by, member.name()); // may ask a Keycloak, so it is done before anything is opened
                    return once(by, typed, () -> keepers.admit(by, member));
                },
                again -> page(by, typed.value(FORM), again));
    }

    @POST
    @Path("invitations")
    public Response invite(@RestPath String population, MultivaluedMap<String, String> form, @Context UriInfo uri) {
        var into = visit.in(population);
        return invitations.made(visit.asker(), into, Typed.of(form), uri, visit.getBase() + "/members");
    }

    @POST
    @Path("members/{name}/end")
    public Response dismiss(@RestPath String population, @RestPath String name, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        boolean leaves = visit.getName().equals(name);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    keepers.dismiss(by, name);
                    return leaves ? "/populations" : visit.getBase() + "/members";
                },
                again -> page(by, "list", again));
    }

    @POST
    @Path("collections")
    public Response open(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.attempt(
                typed,
                () -> {
                    var collection = forms.read(listed(typed, "sharedWith", "[,;\\s]+"), NewCollection.class);
                    return once(by, typed, () -> keepers.open(by, collection));
                },
                again -> page(by, "open", again));
    }

    @POST
    @Path("collections/{collection}/region")
    public Response state(@RestPath String population, @RestPath UUID collection, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.attempt(
                typed,
                () -> {
                    regions.state(by, collection, typed.text("region"));
                    return pages.goTo(visit.getBase() + "/members");
                },
                again -> page(by, "region", again));
    }

    @POST
    @Path("regions")
    public Response fix(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.attempt(
                typed,
                () -> {
                    var names = typed.text("names") == null
                            ? new NewRegions(List.of())
                            : forms.read(listed(typed, "names", "\\R+"), NewRegions.class, "revision");
                    regions.fix(by, typed.ifMatch(), names);
                    return pages.goTo(visit.getBase() + "/members");
                },
                again -> page(by, "regions", again));
    }

    @POST
    @Path("regions/distances")
    public Response state(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.attempt(
                typed,
                () -> {
                    regions.state(by, typed.ifMatch(), DistanceRow.stated(typed, pages.words(MembersMessages.class)));
                    return pages.goTo(visit.getBase() + "/members");
                },
                again -> page(by, "distances", again));
    }

    private Response once(Standing by, Typed typed, Supplier<?> work) {
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    work.get();
                    return visit.getBase() + "/members";
                },
                again -> page(by, typed.value(FORM), again));
    }

    private TemplateInstance page(Standing by, String form, Typed typed) {
        var words = pages.words(MembersMessages.class);
        var fixed = regions.fixed(by.populationId());
        var choices = new ArrayList<>(List.of(Option.none(words.noRegion())));
        fixed.names().forEach(name -> choices.add(new Option(name, name)));
        return Templates.members(
                populations.get(by),
                by.isCoordinator() ? keepers.members(by) : List.of(),
                keepers.collections(by),
                fixed,
                DistanceRow.of(fixed.names(), regions.distances(by.populationId())),
                regions.revisionOfDistances(by.populationId()),
                roles(words),
                choices,
                new Shown(form, typed));
    }

    static List<Option> roles(MembersMessages words) {
        return Arrays.stream(Role.values())
                .map(role -> new Option(role.name().toLowerCase(Locale.ROOT), words.roleOf(role)))
                .toList();
    }

    /** The same with one field as the list of what stands in it. */
    private static Typed listed(Typed typed, String field, String separator) {
        var values = new MultivaluedHashMap<String, String>();
        typed.fields().stream()
                .filter(name -> !name.equals(FORM))
                .forEach(name -> values.put(name, typed.values(name)));
        values.remove(field);
        values.put(
                field + "[]",
                Arrays.stream(typed.value(field).split(separator))
                        .map(String::strip)
                        .filter(value -> !value.isEmpty())
                        .toList());
        return Typed.of(values);
    }
}
