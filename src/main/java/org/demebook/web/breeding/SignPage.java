package org.demebook.web.breeding;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import org.demebook.breeding.BreedingSignView;
import org.demebook.breeding.BreedingSigns;
import org.demebook.breeding.NewBreedingSign;
import org.demebook.breeding.Withdrawal;
import org.demebook.keeper.Standing;
import org.demebook.notation.Sex;
import org.demebook.registry.Populations;
import org.demebook.taxon.BirthMode;
import org.demebook.web.Forms;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;

/** One breeding sign: corrected, or taken back. */
@Path("/populations/{population}/breeding-signs/{id}")
@Produces(Pages.HTML)
class SignPage {
    @CheckedTemplate(basePath = "breeding", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance sign(
                BreedingSignView sign,
                List<Option> kinds,
                List<Option> howKnown,
                List<Option> males,
                boolean laysEggs,
                Typed typed,
                Typed withdrawal);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    BreedingSigns signs;

    @Inject
    Populations populations;

    @Inject
    BreedingChoices choices;

    @GET
    public Response sign(@RestPath String population, @RestPath UUID id) {
        var by = visit.in(population);
        return pages.show(page(by, id, noted(signs.get(by, id)), Typed.nothing()));
    }

    @POST
    public Response correct(@RestPath String population, @RestPath UUID id, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.attempt(
                Typed.of(form),
                () -> {
                    var typed = Typed.of(SignForm.body(form, visit.zone()));
                    var told = forms.read(typed, NewBreedingSign.class, SignForm.TIME, "revision");
                    signs.correct(by, id, typed.ifMatch(), told);
                    return pages.goTo(address(by, id));
                },
                typed -> page(by, id, typed, Typed.nothing()));
    }

    @POST
    @Path("withdrawal")
    public Response withdraw(@RestPath String population, @RestPath UUID id, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                Typed.of(form),
                () -> {
                    signs.withdraw(
                            by, id, forms.read(Typed.of(form), Withdrawal.class).reason());
                    return address(by, id);
                },
                typed -> page(by, id, noted(signs.get(by, id)), typed));
    }

    private String address(Standing by, UUID id) {
        return visit.getBase() + "/animals/" + signs.get(by, id).female() + "/breeding";
    }

    private TemplateInstance page(Standing by, UUID id, Typed typed, Typed withdrawal) {
        boolean laysEggs = populations.get(by).birthMode() == BirthMode.EGG_LAYING;
        return Templates.sign(
                signs.get(by, id),
                choices.kinds(laysEggs),
                choices.howKnown(),
                choices.animals(by, Sex.MALE, typed.text("male")),
                laysEggs,
                typed,
                withdrawal);
    }

    private Typed noted(BreedingSignView sign) {
        return Typed.nothing()
                .with("revision", sign.revision())
                .with("kind", sign.kind().word())
                .with("happenedOn", sign.happenedOn())
                .with(SignForm.TIME, sign.happenedAt() == null ? null : SignForm.time(sign.happenedAt(), visit.zone()))
                .with("howKnown", sign.howKnown().word())
                .with("male", sign.male())
                .with("eggs", sign.eggs())
                .with("notes", sign.notes());
    }
}
