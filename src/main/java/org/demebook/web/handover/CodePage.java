package org.demebook.web.handover;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import java.util.function.Supplier;
import org.demebook.handover.Address;
import org.demebook.paper.QrCode;
import org.demebook.transfer.Offered;
import org.demebook.web.Pages;
import org.demebook.web.Visit;

/** The page that shows a claim code, this once: the answer to the form that made it, which no browser keeps. */
@ApplicationScoped
class CodePage {
    @CheckedTemplate(basePath = "web/handover", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance code(TransferRow row, String code, String link, QrCode qr);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Told told;

    @Inject
    Address address;

    /**
     * Does what may make a claim code, and shows the code when it did; a form that is sent again leads to the transfer, where
     * a fresh one can be had.
     *
     * @param send does the work once, and answers as the form does otherwise
     */
    Response shownOnce(Supplier<Offered> work, Function<Supplier<String>, Response> send) {
        var made = new AtomicReference<Offered>();
        var answer = send.apply(() -> {
            var offered = work.get();
            made.set(offered);
            return visit.getBase() + "/transfers/" + offered.transfer().id();
        });
        var offered = made.get();
        var done = answer.getStatus() == Response.Status.SEE_OTHER.getStatusCode();
        if (!done || offered == null || offered.claimCode() == null) {
            return answer;
        }
        var link = address.ofClaim(offered.claimCode());
        var page = Templates.code(told.row(offered.transfer()), offered.claimCode(), link, QrCode.of(link));
        return Response.fromResponse(pages.show(page))
                .header(HttpHeaders.CACHE_CONTROL, "no-store")
                .build();
    }
}
