package org.demebook.web;

import io.quarkus.qute.TemplateInstance;
import io.quarkus.qute.i18n.Localized;
import io.quarkus.qute.i18n.MessageBundles;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.Response;
import java.net.URI;

/** Shows pages, in the language of the one who looks at them. */
@ApplicationScoped
public class Pages {
    public static final String HTML = "text/html;charset=UTF-8";
    static final int UNPROCESSABLE = 422;

    @Inject
    Visit visit;

    public Response show(TemplateInstance page) {
        return show(200, page);
    }

    public Response show(int status, TemplateInstance page) {
        return Response.status(status).entity(written(page)).type(HTML).build();
    }

    /** A page or a part of one, written out. */
    public String written(TemplateInstance page) {
        return page.setLocale(visit.getLocale()).render();
    }

    /** Sends the browser on, to look with GET. */
    public Response goTo(String address) {
        return Response.seeOther(URI.create(address)).build();
    }

    /** Words in the language of the one who looks. */
    public <T> T words(Class<T> bundle) {
        return MessageBundles.get(bundle, Localized.Literal.of(visit.getLanguage()));
    }
}
