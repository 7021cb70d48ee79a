package org.demebook.web.rearing;

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
import org.demebook.diary.CareRecordView;
import org.demebook.diary.CareRecords;
import org.demebook.diary.StatedEnd;
import org.demebook.keeper.Standing;
import org.demebook.problem.Finding;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.rest.Page;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Care records: written, listed for an animal, corrected, ended and withdrawn. */
@Path("/populations/{population}")
@Produces(Pages.HTML)
class RecordPage {
    @CheckedTemplate(basePath = "rearing", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance kinds(@Nullable String animal, String back);

        static native TemplateInstance newRecord(RecordKind kind, Typed typed, Choices choices);

        static native TemplateInstance record(
                CareRecordView record, RecordKind kind, Typed typed, Typed ending, Choices choices);

        static native TemplateInstance records(
                String animal,
                @Nullable RecordKind kind,
                Page<CareRecordView> page,
                @Nullable Written written,
                @Nullable Written corrected);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    RecordForm form;

    @Inject
    Rack rack;

    @Inject
    CareRecords careRecords;

    // ── one is written ───────────────────────────────────────────────────────────────────────────────────────────────

    @GET
    @Path("care-records/new")
    public Response write(
            @RestPath String population,
            @RestQuery @Nullable String animal,
            @RestQuery @Nullable String kind,
            @RestQuery @Nullable String back) {
        visit.in(population);
        var wanted = RecordKind.of(kind);
        return wanted.isEmpty()
                ? pages.show(Templates.kinds(animal, back == null ? "" : rack.back(back)))
                : pages.show(page(form.offered(animal, wanted.get()).with("back", back)));
    }

    @POST
    @Path("care-records")
    public Response write(@RestPath String population, MultivaluedMap<String, String> sent) {
        var by = visit.in(population);
        return forms.once(by.keeperId(), Typed.of(sent), () -> written(by, Typed.of(sent)), this::page);
    }

    private String written(Standing by, Typed typed) {
        var stated = form.read(typed);
        if (stated.animal() == null) {
            throw new Refusal(
                    ProblemType.INVALID_VALUES,
                    words().sayAnimal(),
                    List.of(Finding.error("animal", null, words().sayAnimal())));
        }
        var record = careRecords.record(by, stated.animal(), stated).record();
        var back = typed.text("back");
        return Rack.after(back == null ? list(record) : rack.back(back), List.of(record));
    }

    private String list(CareRecordView record) {
        return "%s/animals/%s/care-records".formatted(visit.getBase(), record.animal());
    }

    private TemplateInstance page(Typed typed) {
        var kind = RecordKind.of(typed.text("kind")).orElse(RecordKind.MEAL);
        return Templates.newRecord(kind, typed, choices());
    }

    // ── all of an animal ─────────────────────────────────────────────────────────────────────────────────────────────

    @GET
    @Path("animals/{number}/care-records")
    public Response list(
            @RestPath String population,
            @RestPath String number,
            @RestQuery @Nullable String kind,
            @RestQuery @Nullable String after,
            @RestQuery @Nullable String written,
            @RestQuery @Nullable String corrected) {
        var by = visit.in(population);
        var wanted = RecordKind.of(kind).orElse(null);
        var page = careRecords.page(by, number, wanted == null ? null : wanted.word(), Page.after(after), Page.USUAL);
        var here = "%s/animals/%s/care-records".formatted(visit.getBase(), number);
        return pages.show(Templates.records(
                number,
                wanted,
                page,
                rack.written(by, written, here).orElse(null),
                rack.written(by, corrected, here).orElse(null)));
    }

    // ── one ──────────────────────────────────────────────────────────────────────────────────────────────────────────

    @GET
    @Path("care-records/{record}")
    public Response careRecord(@RestPath String population, @RestPath UUID record) {
        var view = careRecords.get(visit.in(population), record);
        return pages.show(page(view, form.said(view), Typed.nothing()));
    }

    @POST
    @Path("care-records/{record}")
    public Response correct(@RestPath String population, @RestPath UUID record, MultivaluedMap<String, String> sent) {
        var by = visit.in(population);
        var typed = Typed.of(sent);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    var revision = typed.text("revision");
                    var corrected = careRecords
                            .correct(by, record, revision == null ? null : "\"" + revision + "\"", form.read(typed))
                            .record();
                    return list(corrected) + "?corrected=" + Written.Entries.of(List.of(corrected));
                },
                refused -> page(careRecords.get(by, record), refused, Typed.nothing()));
    }

    @POST
    @Path("care-records/{record}/withdrawal")
    public Response withdraw(@RestPath String population, @RestPath UUID record, MultivaluedMap<String, String> sent) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                Typed.of(sent),
                () -> list(careRecords.withdraw(by, record)),
                refused -> ending(by, record, refused));
    }

    @POST
    @Path("care-records/{record}/end")
    public Response end(@RestPath String population, @RestPath UUID record, MultivaluedMap<String, String> sent) {
        var by = visit.in(population);
        var typed = Typed.of(sent);
        return forms.once(
                by.keeperId(),
                typed,
                () -> list(careRecords.end(
                        by, record, forms.read(typed, StatedEnd.class).on())),
                refused -> ending(by, record, refused));
    }

    private TemplateInstance ending(Standing by, UUID record, Typed ending) {
        var view = careRecords.get(by, record);
        return page(view, form.said(view), ending);
    }

    /** @param typed into the form that corrects it; {@code ending} into those that end it or take it back */
    private TemplateInstance page(CareRecordView record, Typed typed, Typed ending) {
        var kind = RecordKind.of(record.kind()).orElseThrow();
        return Templates.record(record, kind, typed, ending, choices());
    }

    private Choices choices() {
        return Choices.in(words());
    }

    private RearingMessages words() {
        return pages.words(RearingMessages.class);
    }
}
