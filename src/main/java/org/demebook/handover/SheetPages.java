package org.demebook.handover;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import org.demebook.handover.SheetText.Row;

/** Sheets and their checks as pages: well-formed XHTML, in one style that goes with the page, and nothing to be fetched. */
@ApplicationScoped
class SheetPages {
    /** What XML 1.0 has no way to write. */
    private static final Pattern UNWRITABLE =
            Pattern.compile("[^\\t\\n\\r\\x{20}-\\x{D7FF}\\x{E000}-\\x{FFFD}\\x{10000}-\\x{10FFFF}]");

    private static final String CSS = style();

    /** The page shows what stands in it, in this style; it loads nothing and runs nothing. */
    static final String SECURITY_POLICY =
            "default-src 'none'; style-src 'sha256-%s'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
                    .formatted(sha256(CSS));

    @CheckedTemplate(basePath = "handover", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance sheet(SheetText sheet, String css);

        static native TemplateInstance check(SheetCheck check, List<Row> rows, String css);
    }

    String of(SheetText sheet) {
        return writable(Templates.sheet(sheet, CSS));
    }

    String of(SheetCheck check) {
        var rows = new ArrayList<>(List.of(
                new Row("Studbook number", check.animal()), new Row("Issued on", InWords.day(check.issuedOn()))));
        if (check.sire() != null) {
            rows.add(new Row("Dam", InWords.dam(check.dam())));
            rows.add(new Row("Sire", check.sire()));
        }
        rows.add(new Row("Code", check.code()));
        rows.add(new Row("SHA-256", check.digest()));
        return writable(Templates.check(check, rows, CSS));
    }

    private static String writable(TemplateInstance page) {
        return UNWRITABLE.matcher(page.render()).replaceAll("\uFFFD");
    }

    private static String style() {
        try (var file = SheetPages.class.getResourceAsStream("/handover/sheet.css")) {
            return new String(Objects.requireNonNull(file).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String sha256(String text) {
        try {
            var digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return Base64.getEncoder().encodeToString(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
