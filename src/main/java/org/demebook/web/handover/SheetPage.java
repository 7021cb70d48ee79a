package org.demebook.web.handover;

import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.vertx.core.http.HttpServerRequest;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import org.demebook.handover.HandoverSheetView;
import org.demebook.handover.HandoverSheets;
import org.demebook.handover.NewHandoverSheet;
import org.demebook.handover.PrintedSheets;
import org.demebook.handover.SheetState;
import org.demebook.keeper.Attempts;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;
import org.demebook.rearing.LeavingView;
import org.demebook.rearing.Rearing;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.transfer.Ending;
import org.demebook.transfer.Kind;
import org.demebook.transfer.State;
import org.demebook.transfer.TransferView;
import org.demebook.transfer.Transfers;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.demebook.web.handover.Told.Condition;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** The sheets that go with an animal: whether it may leave, to issue one, to print it, to take it back. */
@Path("/populations/{population}")
@Produces(Pages.HTML)
class SheetPage {
    private static final String ANY = "*/*";

    @CheckedTemplate(basePath = "web/handover", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance sheets(Readiness readiness, List<HandoverSheetView> sheets, Typed typed);

        static native TemplateInstance sheet(
                HandoverSheetView sheet, boolean mine, boolean claimable, boolean seen, Typed typed);
    }

    /**
     * How an animal stands before it goes.
     *
     * @param number its studbook number
     * @param issuing whether the one who looks may issue a sheet of it
     * @param kind how it changes hands, where it is in a transfer
     * @param leaving the readiness check; null where its care is not for the one who looks to see
     * @param conditions what that asks for
     */
    public record Readiness(
            String number,
            boolean issuing,
            @Nullable Kind kind,
            Kind[] kinds,
            @Nullable LeavingView leaving,
            List<Condition> conditions) {}

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Attempts attempts;

    @Inject
    Animals animals;

    @Inject
    Keepers keepers;

    @Inject
    Rearing rearing;

    @Inject
    Transfers transfers;

    @Inject
    HandoverSheets sheets;

    @Inject
    PrintedSheets printed;

    @Inject
    Told told;

    // ── of an animal ─────────────────────────────────────────────────────────────────────────────────────────────────

    @GET
    @Path("animals/{number}/handover-sheets")
    public Response ofAnimal(@RestPath String population, @RestPath String number) {
        return pages.show(page(visit.in(population), number, Typed.nothing().with("kind", Kind.SALE.word())));
    }

    @POST
    @Path("animals/{number}/handover-sheets")
    public Response issue(@RestPath String population, @RestPath String number, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    var wanted = forms.read(typed, NewHandoverSheet.class);
                    var issued = sheets.issue(by, number, wanted, sheets.figures(by, number));
                    return visit.getBase() + "/handover-sheets/" + issued.id();
                },
                again -> page(by, number, again));
    }

    /**
     * The present sheet of an animal that was handed out, printed with its claim code; it is issued where there is none. May be
     * sent as often as one likes.
     */
    @POST
    @Path("animals/{number}/handover-sheets/print")
    @Produces(ANY)
    public Response print(
            @RestPath String population,
            @RestPath String number,
            MultivaluedMap<String, String> form,
            @Context HttpServerRequest request) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.attempt(
                typed,
                () -> {
                    var code = typed.value("claimCode");
                    return attempts.counted(request, () -> printed.pdf(by, presentSheet(by, number), code));
                },
                again -> page(by, number, again));
    }

    private UUID presentSheet(Standing by, String number) {
        return sheets.of(by, number).stream()
                .filter(sheet -> sheet.state() == SheetState.CURRENT)
                .map(HandoverSheetView::id)
                .findFirst()
                .orElseGet(() -> sheets.issue(by, number, new NewHandoverSheet(null, false), sheets.figures(by, number))
                        .id());
    }

    private TemplateInstance page(Standing by, String number, Typed typed) {
        var animal = animals.get(by, number);
        var transfer = transfers.openOf(by, animal.id()).filter(TransferView::given);
        var leaving = leaving(by, animal);
        var readiness = new Readiness(
                animal.number(),
                animal.alive() && animal.sameAs() == null && (transfer.isPresent() || isHeld(by, animal)),
                transfer.map(TransferView::kind).orElse(null),
                Kind.values(),
                leaving,
                leaving == null ? List.of() : told.conditions(leaving));
        return Templates.sheets(readiness, sheets.of(by, animal.number()), typed);
    }

    private boolean isHeld(Standing by, AnimalView animal) {
        return animal.held() != null
                && animal.held().collection() != null
                && keepers.collectionIds(by).contains(animal.held().collection());
    }

    private @Nullable LeavingView leaving(Standing by, AnimalView animal) {
        try {
            return rearing.readiness(by, animal.number(), null);
        } catch (Refusal refusal) {
            if (refusal.type() == NOT_YOUR_ANIMAL) {
                return null;
            }
            throw refusal;
        }
    }

    // ── one sheet ────────────────────────────────────────────────────────────────────────────────────────────────────

    @GET
    @Path("handover-sheets/{sheet}")
    public Response sheet(@RestPath String population, @RestPath UUID sheet) {
        return pages.show(page(visit.in(population), sheet, Typed.nothing()));
    }

    @POST
    @Path("handover-sheets/{sheet}/print")
    @Produces(ANY)
    public Response print(
            @RestPath String population,
            @RestPath UUID sheet,
            MultivaluedMap<String, String> form,
            @Context HttpServerRequest request) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.attempt(
                typed,
                () -> attempts.counted(request, () -> printed.pdf(by, sheet, typed.value("claimCode"))),
                again -> page(by, sheet, again));
    }

    @POST
    @Path("handover-sheets/{sheet}/withdrawal")
    public Response withdraw(@RestPath String population, @RestPath UUID sheet, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    sheets.withdraw(by, sheet, forms.read(typed, Ending.class));
                    return visit.getBase() + "/handover-sheets/" + sheet;
                },
                again -> page(by, sheet, again));
    }

    private TemplateInstance page(Standing by, UUID sheetId, Typed typed) {
        var sheet = sheets.get(by, sheetId);
        var animal = animals.find(by, sheet.animal());
        var handedOut = animal.flatMap(found -> transfers.openOf(by, found.id()))
                .filter(transfer -> transfer.given() && transfer.state() == State.HANDED_OUT);
        return Templates.sheet(sheet, sheets.issuedBy(by, sheetId), handedOut.isPresent(), animal.isPresent(), typed);
    }
}
