package org.demebook.consent;

import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import org.demebook.rest.Refuses;
import org.demebook.rest.ShownTo;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

@Path(Notice.PATH)
@Tag(name = "Consent")
class NoticeResource {
    /** What keepers are told before they consent. */
    @ShownTo(ShownTo.Whom.EVERYBODY)
    record NoticeView(String version, String language, String text) {}

    @GET
    @PermitAll
    @Operation(operationId = "getConsentNotice", summary = "What keepers are told before they consent")
    @Refuses
    public NoticeView notice() {
        return new NoticeView(Notice.VERSION, Notice.LANGUAGE, Notice.TEXT);
    }
}
