package org.demebook.paper;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.SocketTimeoutException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Read back with Apache PDFBox and the QR code reader of ZXing. */
class PaperTest {
    private static final String LINK = "https://studbook.example/sheets/7WPP-XMP8-EQG1-ZKYC";

    private final Paper paper = new Paper();

    @Test
    void a_telephone_reads_the_qr_code_from_the_page() {
        for (var text : new String[] {LINK, "http://127.0.0.1:8081/sheets/0", LINK + "?" + "x".repeat(300)}) {
            try (var printed = new Printed(paper.pdf(page(qr(text))))) {
                assertThat(printed.qrCode()).isEqualTo(text);
            }
        }
    }

    /** ISO/IEC 18004: a quiet zone of four modules, and symbols of 17 + 4 × version modules. */
    @Test
    void a_qr_code_keeps_its_quiet_zone() {
        var code = QrCode.of(LINK);
        assertThat((code.sideModules() - 2 * 4 - 17) % 4).isZero();
        assertThat(code.path()).startsWith("M4 4h7v1h-7z").doesNotContain("M3 ", "M2 ", "M1 ", "M0 ");
    }

    @Test
    void signs_that_keepers_write_are_on_the_paper() {
        var signs = "× № ü Ü ß é ő ł ♀ ♂ ° – “ ” € ½";
        try (var printed = new Printed(paper.pdf(page("<p>" + signs + "</p><p><b>" + signs + "</b></p>")))) {
            assertThat(printed.text()).contains(signs + " " + signs);
        }
    }

    @Test
    void its_typeface_goes_along_and_no_other_is_wanted() throws IOException {
        try (var printed = new Printed(paper.pdf(page("<p>plain <b>bold</b></p>")))) {
            var resources = printed.document.getPage(0).getResources();
            for (var name : resources.getFontNames()) {
                PDFont font = resources.getFont(name);
                assertThat(font.isEmbedded()).as(font.getName()).isTrue();
                assertThat(font.getName()).contains("DejaVuSansCondensed");
            }
        }
    }

    /** ISO 14289-1, clauses 5, 7.1 and 7.2, as far as they are about the whole document; from memory. */
    @Test
    void it_says_of_itself_what_a_screen_reader_has_to_know() throws IOException {
        try (var printed = new Printed(paper.pdf(page("<h1>Sheet</h1>" + qr(LINK))))) {
            var catalog = printed.document.getDocumentCatalog();
            assertThat(catalog.getLanguage()).isEqualTo("en");
            assertThat(catalog.getMarkInfo().isMarked()).isTrue();
            assertThat(catalog.getStructureTreeRoot()).isNotNull();
            assertThat(catalog.getViewerPreferences().displayDocTitle()).isTrue();
            assertThat(printed.document.getDocumentInformation().getTitle()).isEqualTo("A page");
            assertThat(new String(catalog.getMetadata().toByteArray(), UTF_8))
                    .containsPattern("pdfuaid:part(=\"|>)1")
                    .contains("A page", "A page of a test");
            assertThat(catalog.getStructureTreeRoot().getCOSObject().getDictionaryObject(COSName.PARENT_TREE))
                    .isNotNull();
        }
    }

    @Test
    void nothing_that_a_page_refers_to_is_fetched(@TempDir Path folder) throws IOException {
        var secret = Files.writeString(folder.resolve("secret.css"), "p { display: none }");
        try (var server = new ServerSocket(0, 10, InetAddress.getLoopbackAddress())) {
            var address = "http://127.0.0.1:%d/".formatted(server.getLocalPort());
            var body = """
                    <p>here it is</p><img alt="a" src="%1$sa.png" /><p style="background: url(%1$sb.png)">b</p>
                    <link rel="stylesheet" href="%1$sc.css" /><link rel="stylesheet" href="%2$s" />
                    <object data="%1$sd.svg" type="image/svg+xml"></object>
                    """.formatted(address, secret.toUri());
            try (var printed = new Printed(paper.pdf(page(body)))) {
                assertThat(printed.text()).contains("here it is");
            }
            server.setSoTimeout(200);
            assertThatExceptionOfType(SocketTimeoutException.class).isThrownBy(server::accept);
        }
    }

    private static String qr(String text) {
        var code = QrCode.of(text);
        return """
                <svg xmlns="http://www.w3.org/2000/svg" alt="QR code" width="130" height="130" viewBox="0 0 %1$d %1$d">
                <path d="%2$s" /></svg>
                """.formatted(code.sideModules(), code.path());
    }

    private static String page(String body) {
        return """
                <!DOCTYPE html>
                <html xmlns="http://www.w3.org/1999/xhtml" lang="en"><head><title>A page</title>
                <meta name="subject" content="A page of a test" />
                <style>body { font-family: "DejaVu Sans Condensed" }</style></head><body>%s</body></html>
                """.formatted(body);
    }
}
