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
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import org.demebook.keeper.Standing;
import org.demebook.photo.PhotoView;
import org.demebook.rearing.LitterBoard;
import org.demebook.rearing.Rearing;
import org.demebook.registry.Animals;
import org.demebook.registry.KnownAnimals.KnownAnimal;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** The rearing board: the young of a litter side by side, one tap for each meal and shed, and all of them on the scales. */
@Path("/populations/{population}/litters/{litter}/rearing")
@Produces(Pages.HTML)
class BoardPage {
    @CheckedTemplate(basePath = "rearing", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance board(Board board, @Nullable Written written);

        static native TemplateInstance young(YoungCard card, String address, @Nullable Written written);

        static native TemplateInstance weighing(Board board, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Rack rack;

    @Inject
    Rearing rearing;

    @Inject
    Animals animals;

    @Inject
    Scales scales;

    @GET
    public Response board(
            @RestPath String population,
            @RestPath UUID litter,
            @RestQuery @Nullable String young,
            @RestQuery @Nullable String written) {
        var by = visit.in(population);
        var board = board(by, litter);
        var card = board.cards().stream()
                .filter(one -> one.row().animal().equals(young))
                .findFirst();
        if (visit.isFragment() && card.isPresent()) {
            var here = board.address() + "?young=" + young;
            return pages.show(Templates.young(
                    card.get(), board.address(), rack.written(by, written, here).orElse(null)));
        }
        return pages.show(Templates.board(
                board, rack.written(by, written, board.address()).orElse(null)));
    }

    private Board board(Standing by, UUID litter) {
        var board = rearing.board(by, litter);
        var numbers = board.young().stream().map(LitterBoard.BoardRow::animal).toList();
        var known = animals.known(by, numbers, List.of(), false).byNumber();
        var born = board.born().day();
        return new Board(
                board,
                "%s/litters/%s/rearing".formatted(visit.getBase(), litter),
                born.isEmpty() ? null : (int) ChronoUnit.DAYS.between(born.get(), board.on()),
                board.young().stream()
                        .map(row -> card(row, known.get(row.animal()), board))
                        .sorted(YoungCard.byNeed())
                        .toList());
    }

    private static YoungCard card(LitterBoard.BoardRow row, @Nullable KnownAnimal known, LitterBoard board) {
        if (known == null) {
            return YoungCard.of(row, null, null, board.on());
        }
        var held = known.view().held();
        var photos = held == null ? List.<PhotoView>of() : held.photos();
        return YoungCard.of(
                row,
                known.view().sex(),
                photos.isEmpty() ? null : photos.get(photos.size() - 1).id(),
                board.on());
    }

    // ── all on the scales ────────────────────────────────────────────────────────────────────────────────────────────

    @GET
    @Path("weighing")
    public Response weighing(@RestPath String population, @RestPath UUID litter) {
        var by = visit.in(population);
        var typed = Typed.nothing().with("on", visit.getToday()).with("unit", unit());
        return pages.show(Templates.weighing(board(by, litter), typed));
    }

    @POST
    @Path("weighing")
    public Response weighed(@RestPath String population, @RestPath UUID litter, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    var written = scales.weighed(by, typed);
                    return Rack.after("%s/litters/%s/rearing".formatted(visit.getBase(), litter), written);
                },
                refused -> Templates.weighing(board(by, litter), refused));
    }

    private String unit() {
        return visit.getPreferences().mass().word();
    }
}
