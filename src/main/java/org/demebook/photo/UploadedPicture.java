package org.demebook.photo;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.regex.Pattern;
import java.util.zip.CRC32;
import org.jspecify.annotations.Nullable;

/**
 * A JPEG or PNG file taken apart without decoding it: complete from its first mark to its last, nothing else hidden
 * in it, and reduced to what a decoder needs to see the picture.
 *
 * <p>Sources: ITU-T T.81 annex B (JPEG markers), W3C PNG specification chapter 5 (chunks).
 *
 * @param format {@code jpeg} or {@code png}
 * @param essence the file without comments, texts and every other piece that carries no picture
 * @param exif the EXIF block with the header that it has in a JPEG; null: the camera wrote none
 */
record UploadedPicture(String format, byte[] essence, byte @Nullable [] exif) {
    private static final byte[] PNG_SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
    private static final byte[] JPEG_SIGNATURE = {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF};
    private static final byte[] EXIF_HEADER = latin("Exif\0\0");

    private static final int START_OF_SCAN = 0xDA;
    private static final int END_OF_IMAGE = 0xD9;
    // Each scan of a progressive picture costs a pass over all of it; cameras and editors write about ten.
    private static final int MOST_SCANS = 50;

    private static final Pattern MARKUP = Pattern.compile("<(script|html|\\?php)", Pattern.CASE_INSENSITIVE);
    private static final int PDF_HEADER_WITHIN = 1024;
    private static final int ZIP_END_WITHIN = 22 + 65_535;

    static UploadedPicture of(byte[] upload) {
        if (startsWith(upload, 0, JPEG_SIGNATURE)) {
            refuseSecondMeaning(upload);
            return jpeg(upload);
        }
        if (startsWith(upload, 0, PNG_SIGNATURE)) {
            refuseSecondMeaning(upload);
            return png(upload);
        }
        if (startsWith(upload, 4, latin("ftyp"))) {
            throw new IllegalArgumentException(
                    "This is a HEIC picture or a film; have the telephone send the photo as JPEG and upload that");
        }
        throw new IllegalArgumentException("This is neither a JPEG nor a PNG picture; save it as one of them");
    }

    /** A file that another program would open as an archive, a document or a page is not a photo from a camera. */
    private static void refuseSecondMeaning(byte[] upload) {
        String text = latin(upload, 0, upload.length);
        if (text.substring(Math.max(0, text.length() - ZIP_END_WITHIN)).contains("PK\5\6")
                || text.substring(0, Math.min(text.length(), PDF_HEADER_WITHIN)).contains("%PDF-")
                || MARKUP.matcher(text).find()) {
            throw somethingElseInside();
        }
    }

    private static UploadedPicture jpeg(byte[] upload) {
        var essence = new ByteArrayOutputStream(upload.length);
        essence.write(upload, 0, 2);
        byte[] exif = null;
        int scans = 0;
        int at = 2;
        while (true) {
            int marker = markerAt(upload, at);
            at = afterMarker(upload, at);
            if (marker == END_OF_IMAGE) {
                essence.writeBytes(new byte[] {(byte) 0xFF, (byte) END_OF_IMAGE});
                refuseForeignTail(upload, at);
                return new UploadedPicture("jpeg", essence.toByteArray(), exif);
            }
            int end = endOfSegment(upload, at);
            if (marker == START_OF_SCAN) {
                end = endOfScan(upload, end);
                if (++scans > MOST_SCANS) {
                    throw new IllegalArgumentException(
                            "This JPEG is built of far more layers than a photo has; save it anew and upload that");
                }
            }
            byte[] body = Arrays.copyOfRange(upload, at, end);
            if (marker == 0xE1 && exif == null && startsWith(body, 2, EXIF_HEADER)) {
                exif = Arrays.copyOfRange(body, 2, body.length);
            }
            if (isNeededToDecode(marker, body)) {
                essence.write(0xFF);
                essence.write(marker);
                essence.writeBytes(body);
            }
            at = end;
        }
    }

    private static int markerAt(byte[] jpeg, int at) {
        int code = afterMarker(jpeg, at) - 1;
        return jpeg[code] & 0xFF;
    }

    private static int afterMarker(byte[] jpeg, int at) {
        int code = at;
        while (code < jpeg.length && jpeg[code] == (byte) 0xFF) {
            code++;
        }
        if (code == at || code >= jpeg.length || jpeg[code] == 0) {
            throw damaged();
        }
        return code + 1;
    }

    private static int endOfSegment(byte[] jpeg, int at) {
        if (at + 2 > jpeg.length) {
            throw damaged();
        }
        int length = (jpeg[at] & 0xFF) << 8 | jpeg[at + 1] & 0xFF;
        if (length < 2 || at + length > jpeg.length) {
            throw damaged();
        }
        return at + length;
    }

    /** Coded data run on to the next marker that is neither a stuffed zero nor a restart. */
    private static int endOfScan(byte[] jpeg, int from) {
        for (int at = from; at + 1 < jpeg.length; at++) {
            int next = jpeg[at + 1] & 0xFF;
            if (jpeg[at] == (byte) 0xFF && next != 0 && next != 0xFF && (next < 0xD0 || next > 0xD7)) {
                return at;
            }
        }
        throw damaged();
    }

    private static boolean isNeededToDecode(int marker, byte[] body) {
        return switch (marker) {
            case 0xE0 -> startsWith(body, 2, latin("JFIF\0"));
            case 0xE2 -> startsWith(body, 2, latin("ICC_PROFILE\0")); // to turn its colours into sRGB
            case 0xEE -> startsWith(body, 2, latin("Adobe")); // says how the colours are coded
            default -> marker < 0xE0 || marker > 0xFE;
        };
    }

    /** Telephones put previews, brightness maps, a few seconds of film and their own notes behind the picture. */
    private static void refuseForeignTail(byte[] jpeg, int end) {
        int at = end;
        while (at < jpeg.length
                && (jpeg[at] == 0 || jpeg[at] == (byte) 0xFF && !startsWith(jpeg, at, JPEG_SIGNATURE))) {
            at++;
        }
        boolean known = at == jpeg.length
                || startsWith(jpeg, at, JPEG_SIGNATURE)
                || latin(jpeg, end, Math.min(jpeg.length, end + 64)).contains("ftyp")
                || startsWith(jpeg, jpeg.length - 4, latin("SEFT"));
        if (!known) {
            throw somethingElseInside();
        }
    }

    private static UploadedPicture png(byte[] upload) {
        var essence = new ByteArrayOutputStream(upload.length);
        essence.writeBytes(PNG_SIGNATURE);
        byte[] exif = null;
        int at = PNG_SIGNATURE.length;
        while (true) {
            int end = endOfChunk(upload, at);
            String type = latin(upload, at + 4, at + 8);
            switch (type) {
                case "IHDR", "PLTE", "tRNS", "IDAT", "IEND" -> essence.write(upload, at, end - at);
                case "eXIf" -> exif = withExifHeader(Arrays.copyOfRange(upload, at + 8, end - 4));
                default -> {}
            }
            if (type.equals("IEND")) {
                if (end != upload.length) {
                    throw somethingElseInside();
                }
                return new UploadedPicture("png", essence.toByteArray(), exif);
            }
            at = end;
        }
    }

    private static byte[] withExifHeader(byte[] block) {
        return ByteBuffer.allocate(EXIF_HEADER.length + block.length)
                .put(EXIF_HEADER)
                .put(block)
                .array();
    }

    private static int endOfChunk(byte[] png, int at) {
        if (at + 12 > png.length) {
            throw damaged();
        }
        int length = ByteBuffer.wrap(png, at, 4).getInt();
        if (length < 0 || length > png.length - at - 12) {
            throw damaged();
        }
        var sum = new CRC32();
        sum.update(png, at + 4, length + 4);
        if ((int) sum.getValue() != ByteBuffer.wrap(png, at + 8 + length, 4).getInt()) {
            throw damaged();
        }
        return at + 12 + length;
    }

    private static boolean startsWith(byte[] bytes, int at, byte[] start) {
        return at >= 0
                && at + start.length <= bytes.length
                && Arrays.equals(bytes, at, at + start.length, start, 0, start.length);
    }

    private static byte[] latin(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }

    private static String latin(byte[] bytes, int from, int to) {
        return new String(bytes, from, to - from, StandardCharsets.ISO_8859_1);
    }

    static IllegalArgumentException damaged() {
        return new IllegalArgumentException(
                "This picture is damaged or was cut off on its way; upload it again from the camera or telephone");
    }

    private static IllegalArgumentException somethingElseInside() {
        return new IllegalArgumentException(
                "Something that is not a picture is hidden in this file; save the picture anew and upload that");
    }
}
