package org.demebook.handover;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.demebook.keeper.Standing;
import org.demebook.paper.Paper;
import org.jspecify.annotations.Nullable;

/** Sheets as they go out of the house. Refuse as {@link HandoverSheets#print} does. */
@ApplicationScoped
public class PrintedSheets {
    static final String PDF = "application/pdf";

    @Inject
    HandoverSheets sheets;

    @Inject
    SheetPages pages;

    @Inject
    Paper paper;

    /**
     * A sheet as PDF, with the claim code where one is given. Takes some hundred milliseconds of one core.
     *
     * @param claimCode null: none
     */
    public Response pdf(Standing by, UUID sheetId, @Nullable String claimCode) {
        var text = sheets.print(by, sheetId, claimCode);
        var file = text.number().replaceAll("[^A-Za-z0-9-]", "_") + ".pdf";
        return Response.ok(paper.pdf(pages.of(text)), PDF)
                .header("Content-Disposition", "inline; filename=\"" + file + "\"")
                .header("Cache-Control", claimCode == null ? "private, no-cache" : "no-store")
                .header("X-Content-Type-Options", "nosniff")
                .build();
    }
}
