package org.demebook.web.sheets;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import java.util.Locale;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.sheet.Column;
import org.demebook.sheet.Exports;
import org.demebook.sheet.Exports.Format;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** Where sheets come in and go out. */
@Path("/populations/{population}")
@Produces(Pages.HTML)
class SheetsPage {
    @CheckedTemplate(basePath = "sheets", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance sheets(boolean hasCollection, Column[] columns, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Keepers keepers;

    @Inject
    Exports exports;

    @GET
    @Path("sheets")
    public Response sheets(@RestPath String population) {
        return pages.show(page(visit.in(population), Typed.nothing()));
    }

    /** @param typed what was sent to be imported, when it could not be read */
    TemplateInstance page(Standing by, Typed typed) {
        return Templates.sheets(!keepers.collections(by).isEmpty(), Column.values(), typed);
    }

    /** The names of all columns and nothing below. */
    @GET
    @Path("sheets/template")
    public Response template(@RestPath String population, @QueryParam("format") @Nullable String format) {
        visit.in(population);
        var kind = format(format);
        return file("demebook", kind, exports.empty(kind));
    }

    @GET
    @Path("export")
    public Response export(
            @RestPath String population,
            @QueryParam("format") @Nullable String format,
            @QueryParam("mine") @Nullable String mine) {
        var by = visit.in(population);
        var kind = format(format);
        return file(population + "-animals", kind, exports.export(by, kind, "true".equals(mine)));
    }

    private static Format format(@Nullable String word) {
        return "xlsx".equals(word) ? Format.XLSX : Format.CSV;
    }

    private static Response file(String name, Format kind, Object content) {
        var file = name + "." + kind.name().toLowerCase(Locale.ROOT);
        return Response.ok(content, kind.mediaType())
                .header("Content-Disposition", "attachment; filename=\"" + file + "\"")
                .build();
    }
}
