package org.demebook.web.litter;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.demebook.keeper.Standing;
import org.demebook.litter.LitterView;
import org.demebook.litter.Litters;
import org.demebook.litter.Outcome;
import org.demebook.litter.StatedTwins;
import org.demebook.reading.FatherlessSigns;
import org.demebook.reading.Readings;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** One litter: what was found, what it tells, its young; and what is corrected of it the next morning. */
@Path("/populations/{population}/litters")
@Produces(Pages.HTML)
class LitterPage {
    @CheckedTemplate(basePath = "litter", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance litter(LitterStory story, Typed twins, Typed photo);

        static native TemplateInstance fatherlessSigns(
                LitterView litter, FatherlessSigns fatherless, boolean noMale, boolean onlyRecessives);

        static native TemplateInstance outcome(LitterView litter, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Litters litters;

    @Inject
    Readings readings;

    @Inject
    LitterStories stories;

    @Inject
    LitterPictures pictures;

    @GET
    @Path("{litter}")
    public Response litter(@RestPath String population, @RestPath UUID litter) {
        return pages.show(page(visit.in(population), litter, Typed.nothing(), Typed.nothing()));
    }

    private TemplateInstance page(Standing by, UUID litter, Typed twins, Typed photo) {
        return Templates.litter(stories.of(by, litter), twins, photo);
    }

    /**
     * What speaks for young without a sire.
     *
     * @param noMale the keeper says that the dam met none
     * @param onlyRecessives the keeper says that the young show recessives of the dam alone
     */
    @GET
    @Path("{litter}/fatherless-signs")
    public Response fatherlessSigns(
            @RestPath String population,
            @RestPath UUID litter,
            @RestQuery boolean noMale,
            @RestQuery boolean onlyRecessives) {
        var by = visit.in(population);
        var signs = readings.fatherlessSigns(by, litter, noMale, onlyRecessives);
        return pages.show(Templates.fatherlessSigns(litters.get(by, litter), signs, noMale, onlyRecessives));
    }

    private String address(UUID litter) {
        return visit.getBase() + "/litters/" + litter;
    }

    // ── the next morning ─────────────────────────────────────────────────────────────────────────────────────────────

    @GET
    @Path("{litter}/outcome")
    public Response outcome(@RestPath String population, @RestPath UUID litter) {
        var view = litters.get(visit.in(population), litter);
        var typed = Typed.nothing()
                .with("revision", view.revision())
                .with("liveBorn", view.liveBorn())
                .with("malformedLive", view.malformedLive())
                .with("stillborn", view.stillborn())
                .with("malformedStillborn", view.malformedStillborn())
                .with("partDeveloped", view.partDeveloped())
                .with("unfertilised", view.unfertilised())
                .with("infertile", view.infertile())
                .with("earlyDead", view.earlyDead())
                .with("ovaFound", view.ovaFound());
        return pages.show(Templates.outcome(view, typed));
    }

    @POST
    @Path("{litter}/outcome")
    public Response correct(@RestPath String population, @RestPath UUID litter, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.attempt(
                Typed.of(form),
                () -> {
                    var typed = Typed.of(form);
                    litters.correct(by, litter, revision(typed), forms.read(typed, Outcome.class, "revision"));
                    return pages.goTo(address(litter));
                },
                typed -> Templates.outcome(litters.get(by, litter), typed));
    }

    private static @Nullable String revision(Typed typed) {
        var revision = typed.text("revision");
        return revision == null ? null : "\"" + revision + "\"";
    }

    // ── twins ────────────────────────────────────────────────────────────────────────────────────────────────────────

    @POST
    @Path("{litter}/twins")
    public Response stateTwins(
            @RestPath String population, @RestPath UUID litter, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                Typed.of(form),
                () -> {
                    var twins = forms.read(Typed.of(form), StatedTwins.class);
                    litters.stateTwins(by, litter, twins.numbers(), twins.kind());
                    return address(litter);
                },
                typed -> page(by, litter, typed, Typed.nothing()));
    }

    @POST
    @Path("{litter}/twins/withdrawal")
    public Response withdrawTwins(
            @RestPath String population, @RestPath UUID litter, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                Typed.of(form),
                () -> {
                    litters.withdrawTwins(by, litter, Typed.of(form).values("numbers[]"));
                    return address(litter);
                },
                typed -> page(by, litter, typed, Typed.nothing()));
    }

    // ── photographs ──────────────────────────────────────────────────────────────────────────────────────────────────

    @POST
    @Path("{litter}/photos")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    public Response photograph(
            @RestPath String population,
            @RestPath UUID litter,
            @RestForm("photo") @Nullable FileUpload photo,
            @RestForm @Nullable String moment,
            @RestForm @Nullable String label,
            @RestForm @Nullable String takenOn) {
        var by = visit.in(population);
        var upload = new LitterPictures.Upload(photo, moment, label, takenOn);
        return forms.once(
                by.keeperId(),
                upload.typed(),
                () -> {
                    pictures.add(by, litter, upload);
                    return address(litter) + "#photos";
                },
                typed -> page(by, litter, Typed.nothing(), typed));
    }
}
