package org.demebook.photo;

import java.awt.Color;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Photos as cameras and telephones write them, with everything in them that must not come out again. */
public final class CameraPhoto {
    static final String CAMERA = "SNAKECAM 3000";
    static final String COMMENT = "behind the shed, third rack";
    static final String XMP = "<x:xmpmeta xmlns:x='adobe:ns:meta/'>my address</x:xmpmeta>";
    /** 17° 15' 26.5'', as an EXIF rational each. */
    static final byte[] LATITUDE = ByteBuffer.allocate(24)
            .putInt(17)
            .putInt(1)
            .putInt(15)
            .putInt(1)
            .putInt(265)
            .putInt(10)
            .array();

    private static final int JFIF_END = 2 + 2 + 16;

    private CameraPhoto() {}

    /** A quarter each of red (first row, first column), green (first row, last column), blue and white. */
    static BufferedImage quarters(int width, int height, int imageType) {
        var image = new BufferedImage(width, height, imageType);
        var graphics = image.createGraphics();
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, width, height);
        graphics.setColor(Color.RED);
        graphics.fillRect(0, 0, width / 2, height / 2);
        graphics.setColor(Color.GREEN);
        graphics.fillRect(width / 2, 0, width - width / 2, height / 2);
        graphics.setColor(Color.BLUE);
        graphics.fillRect(0, height / 2, width / 2, height - height / 2);
        graphics.dispose();
        return image;
    }

    public static byte[] plainJpeg(int width, int height) {
        return encoded(quarters(width, height, BufferedImage.TYPE_INT_RGB), "jpeg");
    }

    public static byte[] plainPng(int width, int height) {
        return encoded(quarters(width, height, BufferedImage.TYPE_INT_RGB), "png");
    }

    static byte[] encoded(BufferedImage image, String format) {
        var out = new ByteArrayOutputStream();
        try {
            if (!ImageIO.write(image, format, out)) {
                throw new IllegalStateException("No writer of " + format + " for this image");
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    static byte[] progressiveJpeg(int width, int height) {
        var writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        var param = writer.getDefaultWriteParam();
        param.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
        var out = new ByteArrayOutputStream();
        try (var stream = new MemoryCacheImageOutputStream(out)) {
            writer.setOutput(stream);
            writer.write(null, new IIOImage(quarters(width, height, BufferedImage.TYPE_INT_RGB), null, null), param);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            writer.dispose();
        }
        return out.toByteArray();
    }

    /** One grey, given in linear light, with the colour profile that says so in the file. */
    static byte[] jpegInLinearLight(int width, int height, int level) {
        var image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                image.setRGB(x, y, new Color(level, level, level).getRGB());
            }
        }
        byte[] profile = ICC_Profile.getInstance(ColorSpace.CS_LINEAR_RGB).getData();
        byte[] firstOfOne = {1, 1};
        return inserted(
                encoded(image, "jpeg"), JFIF_END, segment(0xE2, concat(latin("ICC_PROFILE\0"), firstOfOne, profile)));
    }

    /** The JPEG with camera, orientation, place, comment, XMP and IPTC put in right after its first mark. */
    public static byte[] withNotes(byte[] jpeg, int orientation) {
        var notes = new ByteArrayOutputStream();
        notes.writeBytes(segment(0xE1, concat(latin("Exif\0\0"), exif(orientation))));
        notes.writeBytes(segment(0xE1, concat(latin("http://ns.adobe.com/xap/1.0/\0"), latin(XMP))));
        notes.writeBytes(segment(0xED, concat(latin("Photoshop 3.0\0"), iptcCity("Belmopan"))));
        notes.writeBytes(segment(0xFE, latin(COMMENT)));
        return inserted(jpeg, 2, notes.toByteArray());
    }

    /**
     * A TIFF block by hand, big-endian: IFD0 with make, orientation and the pointer to a GPS IFD with a place.
     * Tags: make 010F, orientation 0112, GPS pointer 8825, latitude 1 and 2, longitude 3 and 4 (EXIF 2.3, from memory).
     */
    static byte[] exif(int orientation) {
        byte[] make = latin(CAMERA + "\0");
        int makeAt = 8 + 2 + 3 * 12 + 4;
        int gpsAt = makeAt + make.length + make.length % 2;
        int latitudeAt = gpsAt + 2 + 4 * 12 + 4;
        var tiff = ByteBuffer.allocate(latitudeAt + 2 * LATITUDE.length);
        tiff.put(latin("MM")).putShort((short) 42).putInt(8);
        tiff.putShort((short) 3);
        entry(tiff, 0x010F, 2, make.length).putInt(makeAt);
        entry(tiff, 0x0112, 3, 1).putShort((short) orientation).putShort((short) 0);
        entry(tiff, 0x8825, 4, 1).putInt(gpsAt);
        tiff.putInt(0).put(make).position(gpsAt);
        tiff.putShort((short) 4);
        entry(tiff, 1, 2, 2).put(latin("N\0\0\0"));
        entry(tiff, 2, 5, 3).putInt(latitudeAt);
        entry(tiff, 3, 2, 2).put(latin("W\0\0\0"));
        entry(tiff, 4, 5, 3).putInt(latitudeAt + LATITUDE.length);
        tiff.putInt(0).put(LATITUDE).put(LATITUDE);
        return tiff.array();
    }

    private static ByteBuffer entry(ByteBuffer tiff, int tag, int type, int count) {
        return tiff.putShort((short) tag).putShort((short) type).putInt(count);
    }

    /** An image resource block 0404 with the IPTC record 2:90 (city), from memory. */
    private static byte[] iptcCity(String city) {
        byte[] record = concat(new byte[] {0x1C, 2, 90, 0, (byte) city.length()}, latin(city));
        byte[] padded = record.length % 2 == 0 ? record : concat(record, new byte[1]);
        return ByteBuffer.allocate(12 + padded.length)
                .put(latin("8BIM"))
                .putShort((short) 0x0404)
                .putShort((short) 0)
                .putInt(record.length)
                .put(padded)
                .array();
    }

    static byte[] segment(int marker, byte[] content) {
        return ByteBuffer.allocate(4 + content.length)
                .put((byte) 0xFF)
                .put((byte) marker)
                .putShort((short) (content.length + 2))
                .put(content)
                .array();
    }

    static byte[] chunk(String type, byte[] content) {
        var sum = new CRC32();
        sum.update(latin(type));
        sum.update(content);
        return ByteBuffer.allocate(12 + content.length)
                .putInt(content.length)
                .put(latin(type))
                .put(content)
                .putInt((int) sum.getValue())
                .array();
    }

    /** The chunks behind the header, which is 25 bytes after a signature of 8. */
    static byte[] withChunks(byte[] png, byte[]... chunks) {
        return inserted(png, 33, concat(chunks));
    }

    static byte[] deflated(byte[] bytes) {
        var out = new ByteArrayOutputStream();
        try (var deflater = new DeflaterOutputStream(out)) {
            deflater.write(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    static byte[] inserted(byte[] bytes, int at, byte[] more) {
        return ByteBuffer.allocate(bytes.length + more.length)
                .put(bytes, 0, at)
                .put(more)
                .put(bytes, at, bytes.length - at)
                .array();
    }

    static byte[] concat(byte[]... parts) {
        var out = new ByteArrayOutputStream();
        for (byte[] part : parts) {
            out.writeBytes(part);
        }
        return out.toByteArray();
    }

    static byte[] latin(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }

    static String latin(byte[] bytes) {
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }
}
