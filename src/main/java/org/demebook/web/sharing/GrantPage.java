package org.demebook.web.sharing;

import static org.demebook.web.Option.none;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.demebook.consent.Action;
import org.demebook.consent.ConsentReceipt;
import org.demebook.consent.EffectView;
import org.demebook.consent.Effects;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.GrantView;
import org.demebook.consent.Grants;
import org.demebook.consent.NewGrant;
import org.demebook.consent.PlannedSharing;
import org.demebook.consent.Purpose;
import org.demebook.consent.Receipts;
import org.demebook.consent.Recipient;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.rest.Page;
import org.demebook.web.Forms;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** Grants that are written by hand: with their effect before they are given, and with the way to take them back. */
@Path("/populations/{population}/grants")
@Produces(Pages.HTML)
class GrantPage {
    private static final String ANIMALS = "animals";
    private static final String UNTIL = "until";

    @CheckedTemplate(basePath = "sharing", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance grants(Page<GrantView> grants);

        static native TemplateInstance newGrant(
                GrantForm form, Typed typed, @Nullable List<Reach> changes, int animals);

        static native TemplateInstance grant(GrantView grant, Typed typed);

        static native TemplateInstance receipt(ConsentReceipt receipt, GrantView grant);
    }

    /**
     * What the form of a grant offers.
     *
     * @param members empty for who may not list them, and types a name
     */
    public record GrantForm(
            List<Option> collections,
            List<Option> recipients,
            List<Option> members,
            List<Option> fieldGroups,
            List<Option> purposes,
            List<Option> actions) {}

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Keepers keepers;

    @Inject
    Grants grants;

    @Inject
    Effects effects;

    @Inject
    Receipts receipts;

    @GET
    public Response grants(@RestPath String population, @QueryParam("after") @Nullable String after) {
        var by = visit.in(population);
        return pages.show(Templates.grants(grants.page(by, null, null, Page.after(after), Page.USUAL)));
    }

    @GET
    @Path("new")
    public Response form(@RestPath String population, @QueryParam("animal") @Nullable String animal) {
        var by = visit.in(population);
        var typed = Typed.nothing()
                .with("recipient.kind", Recipient.Kind.KEEPER.word())
                .with("actions[]", Action.READ.word())
                .with("purposes[]", Purpose.PEDIGREE_VIEW.word())
                .with(ANIMALS, animal)
                .with(UNTIL, visit.getToday().plusYears(1));
        return pages.show(page(by, typed, null));
    }

    /** What the grant would change; nothing is saved. */
    @POST
    @Path("preview")
    public Response preview(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.attempt(
                typed,
                () -> pages.show(page(by, typed, effects.effect(by, new PlannedSharing(read(typed), null, null)))),
                again -> page(by, again, null));
    }

    @POST
    public Response give(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(), typed, () -> address(grants.give(by, read(typed)).id()), again -> page(by, again, null));
    }

    /** The form has animals in one field, and the last day in place of the moment after it. */
    private NewGrant read(Typed typed) {
        var body = new MultivaluedHashMap<String, String>();
        for (var name : typed.fields()) {
            if (!name.equals(ANIMALS) && !name.equals(UNTIL)) {
                body.put(name, typed.values(name));
            }
        }
        if (typed.text(ANIMALS) != null) {
            body.put(ANIMALS + "[]", Arrays.asList(typed.value(ANIMALS).strip().split("[\\s,;]+")));
        }
        body.putSingle(UNTIL, moment(typed.value(UNTIL).strip()));
        if (!typed.value("recipient.kind").equals(Recipient.Kind.KEEPER.word())) {
            body.remove("recipient.name");
        }
        return forms.read(Typed.of(body), NewGrant.class, "once");
    }

    private static String moment(String day) {
        try {
            return day.isEmpty()
                    ? ""
                    : LocalDate.parse(day)
                            .plusDays(1)
                            .atStartOfDay(ZoneOffset.UTC)
                            .toInstant()
                            .toString();
        } catch (DateTimeParseException e) {
            return day; // refused, with the field that it stands in
        }
    }

    @GET
    @Path("{grant}")
    public Response grant(@RestPath String population, @RestPath UUID grant) {
        var by = visit.in(population);
        return pages.show(Templates.grant(grants.get(by, grant), Typed.nothing()));
    }

    @GET
    @Path("{grant}/receipt")
    public Response receipt(@RestPath String population, @RestPath UUID grant) {
        var by = visit.in(population);
        return pages.show(Templates.receipt(receipts.of(by, grant), grants.get(by, grant)));
    }

    @POST
    @Path("{grant}/withdrawal")
    public Response withdraw(@RestPath String population, @RestPath UUID grant, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return changed(by, grant, form, () -> grants.withdraw(by, grant));
    }

    @POST
    @Path("{grant}/renewal")
    public Response renew(@RestPath String population, @RestPath UUID grant, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return changed(by, grant, form, () -> grants.renew(by, grant));
    }

    private Response changed(Standing by, UUID grant, MultivaluedMap<String, String> form, Supplier<GrantView> change) {
        return forms.once(
                by.keeperId(),
                Typed.of(form),
                () -> address(change.get().id()),
                again -> Templates.grant(grants.get(by, grant), again));
    }

    private List<Option> others(Standing by, SharingMessages words) {
        var others = new ArrayList<>(List.of(none(words.noKeeper())));
        keepers.members(by).stream()
                .filter(member -> !member.name().equals(visit.getName()))
                .forEach(member -> others.add(new Option(member.name(), member.name())));
        return others;
    }

    private String address(UUID grant) {
        return visit.getBase() + "/grants/" + grant;
    }

    private TemplateInstance page(Standing by, Typed typed, @Nullable EffectView effect) {
        var words = pages.words(SharingMessages.class);
        var collections = keepers.collections(by).stream()
                .map(collection -> new Option(collection.id().toString(), collection.label()))
                .toList();
        var form = new GrantForm(
                collections,
                // of a node nobody can be told yet: other nodes are not known here
                Arrays.stream(Recipient.Kind.values())
                        .filter(kind -> kind != Recipient.Kind.NODE)
                        .map(kind -> new Option(kind.word(), words.recipient(kind)))
                        .toList(),
                by.isCoordinator() ? others(by, words) : List.of(),
                Arrays.stream(FieldGroup.values())
                        .map(group -> new Option(group.word(), words.fieldGroup(group)))
                        .toList(),
                Arrays.stream(Purpose.values())
                        .map(purpose -> new Option(purpose.word(), words.purpose(purpose)))
                        .toList(),
                Arrays.stream(Action.values())
                        .map(action -> new Option(action.word(), words.action(action)))
                        .toList());
        return Templates.newGrant(
                form, typed, effect == null ? null : Reach.changed(effect), effect == null ? 0 : effect.animals());
    }
}
