package org.demebook.web;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.ScreenshotAnimations;
import com.microsoft.playwright.options.ScreenshotCaret;
import com.microsoft.playwright.options.ScreenshotScale;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/**
 * Pictures of pages, of what is to be seen without scrolling: light, dark, and on a phone. They go to target/pictures; with
 * {@code -Ddemebook.pictures=write} they are taken over into docs/pictures/pages.
 */
final class Pictures {
    private static final Path FOLDER = "write".equals(System.getProperty("demebook.pictures"))
            ? Path.of("docs", "pictures", "pages")
            : Path.of("target", "pictures");
    private static final int LARGEST = 150_000;

    private Pictures() {}

    /** All three of the page that is open at a desk; leaves it as it was. */
    static void take(Visitor visitor, String name) {
        var page = visitor.page;
        page.evaluate("() => document.fonts.ready");
        page.evaluate("() => window.scrollTo(0, 0)");
        page.mouse().move(0, 0); // where it points at nothing
        take(page, name);
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
        take(page, name + "-dark");
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT));
        page.setViewportSize(Look.PHONE.width(), Look.PHONE.height());
        take(page, name + "-phone");
        page.setViewportSize(visitor.look.width(), visitor.look.height());
    }

    private static void take(Page page, String name) {
        var png = page.screenshot(new Page.ScreenshotOptions()
                .setAnimations(ScreenshotAnimations.DISABLED)
                .setCaret(ScreenshotCaret.HIDE)
                .setScale(ScreenshotScale.CSS));
        try {
            Files.createDirectories(FOLDER);
            Files.write(FOLDER.resolve(name + ".png"), small(png));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** With as many colours as a palette of 256 holds: a third of the bytes, and the eye sees no difference on our pages. */
    static byte[] small(byte[] png) throws IOException {
        var picture = ImageIO.read(new ByteArrayInputStream(png));
        var indexed = new ByteArrayOutputStream();
        ImageIO.write(Palette.of(picture).applyTo(picture), "png", indexed);
        var smaller = indexed.size() < png.length ? indexed.toByteArray() : png;
        if (smaller.length > LARGEST) {
            throw new IllegalStateException(
                    "a picture of %d bytes; at most %d go into the repository".formatted(smaller.length, LARGEST));
        }
        return smaller;
    }

    /** A name for a file, after the page's shape; what a stranger sees is another page. */
    static String name(String shape, String who) {
        var name = shape.replaceAll("[^A-Za-z0-9]+", "-").replaceAll("^-|-$", "");
        return (name.isEmpty() ? "first" : name) + (who.equals("stranger") ? "-" + who : "");
    }
}
