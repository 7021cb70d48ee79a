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
import org.demebook.breeding.IntroductionDays;
import org.demebook.breeding.IntroductionView;
import org.demebook.breeding.Introductions;
import org.demebook.breeding.NewIntroduction;
import org.demebook.breeding.Separation;
import org.demebook.breeding.Withdrawal;
import org.demebook.keeper.Standing;
import org.demebook.notation.Sex;
import org.demebook.web.Forms;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** A male and a female that are put together: recorded, ended, corrected, taken back. */
@Path("/populations/{population}/introductions")
@Produces(Pages.HTML)
class IntroductionPage {
    @CheckedTemplate(basePath = "breeding", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance newIntroduction(List<Option> females, List<Option> males, Typed typed);

        static native TemplateInstance introduction(
                IntroductionView introduction, Typed end, Typed days, Typed withdrawal);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Introductions introductions;

    @Inject
    BreedingChoices choices;

    @GET
    @Path("new")
    public Response blank(
            @RestPath String population, @RestQuery @Nullable String female, @RestQuery @Nullable String male) {
        var by = visit.in(population);
        var typed = Typed.nothing().with("female", female).with("male", male).with("fromOn", visit.getToday());
        return pages.show(page(by, typed));
    }

    private TemplateInstance page(Standing by, Typed typed) {
        return Templates.newIntroduction(
                choices.animals(by, Sex.FEMALE, typed.text("female")),
                choices.animals(by, Sex.MALE, typed.text("male")),
                typed);
    }

    @POST
    public Response open(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                Typed.of(form),
                () -> address(introductions
                        .open(by, forms.read(Typed.of(form), NewIntroduction.class))
                        .introduction()
                        .id()),
                typed -> page(by, typed));
    }

    @GET
    @Path("{id}")
    public Response introduction(@RestPath String population, @RestPath UUID id) {
        var view = introductions.get(visit.in(population), id);
        return pages.show(Templates.introduction(view, untilToday(), days(view), Typed.nothing()));
    }

    private Typed untilToday() {
        return Typed.nothing().with("untilOn", visit.getToday());
    }

    private static Typed days(IntroductionView view) {
        return Typed.nothing()
                .with("revision", view.revision())
                .with("fromOn", view.fromOn())
                .with("untilOn", view.untilOn())
                .with("notes", view.notes());
    }

    /** A correction of its days. */
    @POST
    @Path("{id}")
    public Response correct(@RestPath String population, @RestPath UUID id, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.attempt(
                Typed.of(form),
                () -> {
                    var typed = Typed.of(form);
                    var days = forms.read(typed, IntroductionDays.class, "revision");
                    introductions.correct(by, id, typed.ifMatch(), days.fromOn(), days.untilOn(), days.notes());
                    return pages.goTo(address(id));
                },
                typed -> Templates.introduction(introductions.get(by, id), untilToday(), typed, Typed.nothing()));
    }

    @POST
    @Path("{id}/end")
    public Response end(@RestPath String population, @RestPath UUID id, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                Typed.of(form),
                () -> {
                    introductions.end(
                            by, id, forms.read(Typed.of(form), Separation.class).untilOn());
                    return address(id);
                },
                typed -> {
                    var view = introductions.get(by, id);
                    return Templates.introduction(view, typed, days(view), Typed.nothing());
                });
    }

    @POST
    @Path("{id}/withdrawal")
    public Response withdraw(@RestPath String population, @RestPath UUID id, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                Typed.of(form),
                () -> {
                    introductions.withdraw(
                            by, id, forms.read(Typed.of(form), Withdrawal.class).reason());
                    return address(id);
                },
                typed -> {
                    var view = introductions.get(by, id);
                    return Templates.introduction(view, untilToday(), days(view), typed);
                });
    }

    private String address(UUID id) {
        return visit.getBase() + "/introductions/" + id;
    }
}
