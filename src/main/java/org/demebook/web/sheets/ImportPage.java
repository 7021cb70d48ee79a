package org.demebook.web.sheets;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import org.demebook.keeper.Standing;
import org.demebook.problem.Finding;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.sheet.ImportView;
import org.demebook.sheet.Imports;
import org.demebook.sheet.Sheet;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** A sheet that comes in: checked, mended in place, checked again, imported; nothing that was typed is lost on the way. */
@Path("/populations/{population}")
@Produces(Pages.HTML)
class ImportPage {
    private static final String FILE = "file";
    private static final String PASTED = "pasted";

    @CheckedTemplate(basePath = "sheets", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance check(CheckView check, Typed typed);

        static native TemplateInstance run(ImportView run);

        static native TemplateInstance progress(ImportView run);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Imports imports;

    @Inject
    SheetsPage sheets;

    /** A file, or rows that were pasted. */
    @POST
    @Path("import-checks")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    public Response check(
            @RestPath String population,
            @RestForm(FILE) @Nullable FileUpload file,
            @RestForm(PASTED) @Nullable String pasted) {
        var by = visit.in(population);
        var typed = typed(pasted);
        return forms.attempt(
                typed,
                () -> {
                    var sheet = Sheet.read(bytes(file, pasted));
                    var report = imports.check(by, sheet, List.of());
                    return pages.show(Templates.check(CheckView.of(sheet, report, List.of()), Typed.nothing()));
                },
                refused -> sheets.page(by, refused));
    }

    /** The same sheet again, with what was written into its cells. */
    @POST
    @Path("import-checks")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response checkAgain(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.attempt(
                typed,
                () -> {
                    SheetForm.left(typed, words());
                    return pages.show(checked(by, typed));
                },
                again(by));
    }

    @POST
    @Path("imports")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response start(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    var left = SheetForm.left(typed, words());
                    var sheet = SheetForm.sheet(typed);
                    if (imports.check(by, sheet, left).isRefused()) {
                        throw new Refusal(ProblemType.INVALID_VALUES, words().mendFirst());
                    }
                    return address(imports.start(by, sheet, left));
                },
                again(by));
    }

    /** A sheet that is too large to travel through the page. */
    @POST
    @Path("imports")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    public Response startLarge(
            @RestPath String population,
            @RestForm(FILE) @Nullable FileUpload file,
            @RestForm(PASTED) @Nullable String pasted) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                typed(pasted),
                () -> address(imports.start(by, Sheet.read(bytes(file, pasted)), List.of())),
                refused -> sheets.page(by, refused));
    }

    @GET
    @Path("imports/{id}")
    public Response progress(@RestPath String population, @RestPath UUID id) {
        var run = imports.get(visit.in(population), id);
        return pages.show(visit.isFragment() ? Templates.progress(run) : Templates.run(run));
    }

    private Function<Typed, TemplateInstance> again(Standing by) {
        return typed -> typed.value(SheetForm.SHEET).isEmpty() ? sheets.page(by, typed) : checked(by, typed);
    }

    private TemplateInstance checked(Standing by, Typed typed) {
        var sheet = SheetForm.sheet(typed);
        // a reason that is missing is told at its field, and the rule is not left so far
        var left = SheetForm.givenReasons(typed);
        return Templates.check(CheckView.of(sheet, imports.check(by, sheet, left), SheetForm.rules(typed)), typed);
    }

    private String address(ImportView started) {
        return visit.getBase() + "/imports/" + started.id();
    }

    private SheetsMessages words() {
        return pages.words(SheetsMessages.class);
    }

    private static Typed typed(@Nullable String pasted) {
        return Typed.of(new MultivaluedHashMap<>()).with(PASTED, pasted);
    }

    private byte[] bytes(@Nullable FileUpload file, @Nullable String pasted) {
        try {
            if (file != null && file.size() > 0) {
                return Files.readAllBytes(file.uploadedFile());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (pasted == null || pasted.isBlank()) {
            var message = words().nothingSent();
            throw new Refusal(ProblemType.INVALID_VALUES, message, List.of(Finding.error(FILE, null, message)));
        }
        return pasted.getBytes(StandardCharsets.UTF_8);
    }
}
