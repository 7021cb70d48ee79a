package org.demebook.paper;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Objects;
import org.jboss.logging.Logger;

/** Prints pages. */
@ApplicationScoped
public class Paper {
    /** The typeface of paper: DejaVu Sans Condensed, which has ×, №, ♀, ♂ and the letters of European languages. */
    public static final String TYPEFACE = "DejaVu Sans Condensed";

    private static final Logger LOG = Logger.getLogger(Paper.class);
    private static final String REGULAR = "/fonts/DejaVuSansCondensed.ttf";
    private static final String BOLD = "/fonts/DejaVuSansCondensed-Bold.ttf";

    static {
        XRLog.setLoggingEnabled(false); // it would write past the log of the server
    }

    /**
     * A page as PDF, tagged as PDF/UA-1 (ISO 14289-1) asks. Nothing that the page refers to is fetched.
     *
     * <p>Takes some hundred milliseconds of one core, some seconds the first time; call it outside transactions.
     *
     * @param page well-formed XHTML in {@link #TYPEFACE} with a language, a title and a description; of SVG it holds
     *     {@link QrCode}s alone
     */
    public byte[] pdf(String page) {
        var pdf = new ByteArrayOutputStream();
        var builder = new PdfRendererBuilder()
                .useFont(() -> font(REGULAR), TYPEFACE, 400, FontStyle.NORMAL, true)
                .useFont(() -> font(BOLD), TYPEFACE, 700, FontStyle.NORMAL, true)
                .useSVGDrawer(new Boxes())
                .useExternalResourceAccessControl(
                        (uri, kind) -> false, ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI)
                .useExternalResourceAccessControl(
                        (uri, kind) -> false, ExternalResourceControlPriority.RUN_AFTER_RESOLVING_URI)
                .usePdfUaAccessibility(true)
                .withDiagnosticConsumer(found -> LOG.debug(found.getFormattedMessage()))
                .withProducer("Demebook")
                .withHtmlContent(page, null)
                .toStream(pdf);
        try {
            builder.run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return pdf.toByteArray();
    }

    private static InputStream font(String file) {
        return Objects.requireNonNull(Paper.class.getResourceAsStream(file), file);
    }
}
