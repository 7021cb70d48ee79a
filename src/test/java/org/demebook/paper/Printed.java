package org.demebook.paper;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.NotFoundException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;

/** A PDF as somebody gets it out of the printer: its text, and what a telephone reads from the picture of its first page. */
public final class Printed implements AutoCloseable {
    private static final int DOTS_PER_INCH = 300;

    public final PDDocument document;

    public Printed(byte[] pdf) {
        try {
            document = Loader.loadPDF(pdf);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public int pages() {
        return document.getNumberOfPages();
    }

    /** In one line, so that it does not matter where lines are broken. */
    public String text() {
        try {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public String qrCode() {
        try {
            var page = new PDFRenderer(document).renderImageWithDPI(0, DOTS_PER_INCH);
            return new QRCodeReader()
                    .decode(new BinaryBitmap(new HybridBinarizer(luminance(page))))
                    .getText();
        } catch (NotFoundException e) {
            throw new AssertionError("there is no QR code on the page", e);
        } catch (ReaderException e) {
            throw new AssertionError("the QR code on the page cannot be read", e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static RGBLuminanceSource luminance(BufferedImage page) {
        int[] pixels = page.getRGB(0, 0, page.getWidth(), page.getHeight(), null, 0, page.getWidth());
        return new RGBLuminanceSource(page.getWidth(), page.getHeight(), pixels);
    }

    @Override
    public void close() {
        try {
            document.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
