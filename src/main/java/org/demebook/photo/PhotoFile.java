package org.demebook.photo;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.MemoryCacheImageInputStream;
import net.coobird.thumbnailator.Thumbnails;
import net.coobird.thumbnailator.util.exif.ExifFilterUtils;
import net.coobird.thumbnailator.util.exif.ExifUtils;
import net.coobird.thumbnailator.util.exif.Orientation;
import org.jspecify.annotations.Nullable;

/**
 * A photograph made anew from what a keeper uploaded: upright, in sRGB, as JPEG, with nothing in it but the picture.
 * Where and when it was taken, by what and by whom, comments, texts and colour profiles do not survive.
 *
 * <p>Two arrays as components: compared by identity, and not copied. Treat them as read-only.
 *
 * @param picture JPEG, at most 2048 pixels on the long side, never enlarged
 * @param thumbnail JPEG, at most 320 pixels on the long side
 * @param widthPixels of {@code picture}
 * @param heightPixels of {@code picture}
 * @param sha256 of {@code picture}, in lower-case hexadecimal
 */
public record PhotoFile(byte[] picture, byte[] thumbnail, int widthPixels, int heightPixels, String sha256) {
    static final int MOST_BYTES = 20 * 1024 * 1024;
    static final long MOST_PIXELS = 40_000_000;
    static final int PICTURE_LONG_SIDE = 2048;
    static final int THUMBNAIL_LONG_SIDE = 320;
    private static final double JPEG_QUALITY = 0.85;

    static {
        System.setProperty("java.awt.headless", "true");
        ImageIO.setUseCache(false); // no photo on the disk, not even for a moment
    }

    /**
     * Cleans a JPEG or PNG upload, told by its content. The largest picture allowed takes a few seconds and some
     * 250 MB: call it outside a transaction.
     *
     * @throws IllegalArgumentException with a sentence for the keeper: neither JPEG nor PNG, more than 20 MiB or 40
     *     megapixels, damaged, or with something else hidden in it
     */
    static PhotoFile clean(byte[] upload) {
        if (upload.length == 0) {
            throw new IllegalArgumentException("This file is empty; choose the photo again");
        }
        if (upload.length > MOST_BYTES) {
            throw new IllegalArgumentException(
                    "This file is larger than 20 MB; have the photo sent in a smaller size and upload that");
        }
        var source = UploadedPicture.of(upload);
        var large = onWhite(turned(shrunk(decoded(source), PICTURE_LONG_SIDE), source.exif()));
        byte[] picture = jpeg(large);
        byte[] thumbnail = jpeg(onWhite(shrunk(large, THUMBNAIL_LONG_SIDE)));
        return new PhotoFile(picture, thumbnail, large.getWidth(), large.getHeight(), sha256(picture));
    }

    private static BufferedImage decoded(UploadedPicture source) {
        var reader = ImageIO.getImageReadersByFormatName(source.format()).next();
        var complaints = new ArrayList<String>();
        reader.addIIOReadWarningListener((from, complaint) -> complaints.add(complaint));
        try (var in = new MemoryCacheImageInputStream(new ByteArrayInputStream(source.essence()))) {
            reader.setInput(in, true, true);
            var size = sizeWithinLimits(reader);
            var image = pixels(reader, subsampledTo(Math.max(size.width, size.height)));
            if (complaints.stream().anyMatch(PhotoFile::tellsOfLostData)) {
                throw UploadedPicture.damaged();
            }
            return image;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            reader.dispose();
        }
    }

    private static Dimension sizeWithinLimits(ImageReader reader) {
        var size = headerSize(reader);
        if ((long) size.width * size.height > MOST_PIXELS) {
            throw new IllegalArgumentException(
                    "This picture is %d × %d pixels, more than 40 megapixels; save it smaller and upload that"
                            .formatted(size.width, size.height));
        }
        return size;
    }

    // The decoders report damage by exceptions of every kind, so in the next two methods any failure is the file's.

    private static Dimension headerSize(ImageReader reader) {
        try {
            return new Dimension(reader.getWidth(0), reader.getHeight(0));
        } catch (IOException | RuntimeException damage) {
            throw UploadedPicture.damaged();
        }
    }

    private static BufferedImage pixels(ImageReader reader, ImageReadParam param) {
        try {
            return reader.read(0, param);
        } catch (IOException | RuntimeException damage) {
            throw UploadedPicture.damaged();
        }
    }

    /** Leaves out pixels while decoding, so that at least two of them still go into one of the result. */
    private static ImageReadParam subsampledTo(int longSidePixels) {
        var param = new ImageReadParam();
        int every = Math.max(1, longSidePixels / (2 * PICTURE_LONG_SIDE));
        param.setSourceSubsampling(every, every, 0, 0);
        return param;
    }

    private static boolean tellsOfLostData(String complaint) {
        return complaint.contains("remature end") || complaint.contains("Huffman");
    }

    private static BufferedImage shrunk(BufferedImage image, int longSidePixels) {
        double factor = Math.min(1, (double) longSidePixels / Math.max(image.getWidth(), image.getHeight()));
        try {
            return Thumbnails.of(image)
                    .forceSize(scaled(image.getWidth(), factor), scaled(image.getHeight(), factor))
                    .imageType(BufferedImage.TYPE_INT_ARGB)
                    .asBufferedImage();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static int scaled(int pixels, double factor) {
        return Math.max(1, (int) Math.round(pixels * factor));
    }

    private static BufferedImage turned(BufferedImage image, byte @Nullable [] exif) {
        var orientation = exif == null ? null : orientation(exif);
        return orientation == null
                ? image
                : ExifFilterUtils.getFilterForOrientation(orientation).apply(image);
    }

    private static @Nullable Orientation orientation(byte[] exif) {
        try {
            return ExifUtils.getOrientationFromExif(exif);
        } catch (RuntimeException spoilt) {
            return null; // a sound picture, and a note about it that the library trips over
        }
    }

    private static BufferedImage onWhite(BufferedImage image) {
        var opaque = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_RGB);
        var graphics = opaque.createGraphics();
        graphics.drawImage(image, 0, 0, Color.WHITE, null);
        graphics.dispose();
        return opaque;
    }

    private static byte[] jpeg(BufferedImage image) {
        var out = new ByteArrayOutputStream();
        try {
            Thumbnails.of(image)
                    .scale(1)
                    .outputFormat("jpg")
                    .outputQuality(JPEG_QUALITY)
                    .toOutputStream(out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256", e);
        }
    }
}
