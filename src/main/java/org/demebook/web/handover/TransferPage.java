package org.demebook.web.handover;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.demebook.keeper.CollectionView;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.registry.Animals;
import org.demebook.rest.Page;
import org.demebook.transfer.Acceptance;
import org.demebook.transfer.Ending;
import org.demebook.transfer.Kind;
import org.demebook.transfer.Renewal;
import org.demebook.transfer.State;
import org.demebook.transfer.Transfers;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** Transfers: what waits for the one who looks, what they offered, what is past; and one of them with what can be done. */
@Path("/populations/{population}/transfers")
@Produces(Pages.HTML)
class TransferPage {
    @CheckedTemplate(basePath = "web/handover", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance transfers(
                List<TransferRow> offered, List<TransferRow> past, boolean first, @Nullable String next);

        static native TemplateInstance transfer(
                TransferRow row, boolean seen, List<CollectionView> collections, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Transfers transfers;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Told told;

    @Inject
    CodePage codes;

    @GET
    public Response list(@RestPath String population, @QueryParam("after") @Nullable String after) {
        var by = visit.in(population);
        var offered = new ArrayList<TransferRow>();
        if (after == null) {
            for (var state : List.of(State.HANDED_OUT, State.OFFERED)) {
                told.rows(transfers.page(by, state, null, Page.MOST).items()).stream()
                        .filter(row -> row.open() && row.transfer().given())
                        .forEach(offered::add);
            }
        }
        var page = transfers.page(by, null, Page.after(after), Page.USUAL);
        var past = told.rows(page.items()).stream().filter(row -> !row.open()).toList();
        return pages.show(Templates.transfers(offered, past, after == null, page.next()));
    }

    @GET
    @Path("{transfer}")
    public Response transfer(@RestPath String population, @RestPath UUID transfer) {
        return pages.show(page(visit.in(population), transfer, Typed.nothing()));
    }

    @POST
    @Path("{transfer}/acceptance")
    public Response accept(@RestPath String population, @RestPath UUID transfer, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return answer(by, transfer, typed, () -> {
            transfers.accept(by, transfer, forms.read(typed, Acceptance.class));
            return address(transfer);
        });
    }

    @POST
    @Path("{transfer}/refusal")
    public Response refuse(@RestPath String population, @RestPath UUID transfer, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return answer(by, transfer, typed, () -> {
            transfers.refuse(by, transfer, forms.read(typed, Ending.class));
            return address(transfer);
        });
    }

    @POST
    @Path("{transfer}/withdrawal")
    public Response withdraw(
            @RestPath String population, @RestPath UUID transfer, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return answer(by, transfer, typed, () -> {
            transfers.withdraw(by, transfer, forms.read(typed, Ending.class));
            return address(transfer);
        });
    }

    @POST
    @Path("{transfer}/claim-code")
    public Response renewCode(
            @RestPath String population, @RestPath UUID transfer, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return codes.shownOnce(
                () -> transfers.renewCode(by, transfer, forms.read(typed, Renewal.class)),
                work -> answer(by, transfer, typed, work));
    }

    private Response answer(Standing by, UUID transfer, Typed typed, Supplier<String> work) {
        return forms.once(by.keeperId(), typed, work, again -> page(by, transfer, again));
    }

    private TemplateInstance page(Standing by, UUID transfer, Typed typed) {
        var row = told.row(transfers.get(by, transfer));
        var goesBack = row.transfer().kind() == Kind.LOAN_RETURN;
        // both sides know of it; its own page is for who may see it besides
        var seen = animals.find(by, row.getNumber()).isPresent();
        return Templates.transfer(row, seen, goesBack ? List.of() : keepers.collections(by), typed);
    }

    private String address(UUID transfer) {
        return visit.getBase() + "/transfers/" + transfer;
    }
}
