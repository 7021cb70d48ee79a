package org.demebook.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.demebook.photo.CameraPhoto.concat;
import static org.demebook.photo.CameraPhoto.latin;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.GpsDirectory;
import com.drew.metadata.icc.IccDirectory;
import com.drew.metadata.iptc.IptcDirectory;
import com.drew.metadata.jpeg.JpegCommentDirectory;
import com.drew.metadata.xmp.XmpDirectory;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.stream.StreamSupport;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PhotoFileTest {
    private static final byte[] PHOTO = CameraPhoto.withNotes(CameraPhoto.plainJpeg(160, 80), 6);

    // Judge: metadata-extractor, which finds all of it in the photo before.
    @Test
    void nothing_but_the_picture_survives() throws Exception {
        var before = metadata(PHOTO);
        assertThat(before.getFirstDirectoryOfType(GpsDirectory.class)
                        .getGeoLocation()
                        .getLatitude())
                .isCloseTo(17 + 15 / 60.0 + 26.5 / 3600, within(1e-9));
        assertThat(before.getFirstDirectoryOfType(ExifIFD0Directory.class).getString(ExifIFD0Directory.TAG_MAKE))
                .isEqualTo(CameraPhoto.CAMERA);
        assertThat(before.getDirectories())
                .hasAtLeastOneElementOfType(XmpDirectory.class)
                .hasAtLeastOneElementOfType(IptcDirectory.class)
                .hasAtLeastOneElementOfType(JpegCommentDirectory.class);

        var clean = PhotoFile.clean(PHOTO);

        requireOnlyPicture(clean.picture());
        requireOnlyPicture(clean.thumbnail());
    }

    private static void requireOnlyPicture(byte[] jpeg) throws ImageProcessingException, IOException {
        assertThat(StreamSupport.stream(metadata(jpeg).getDirectories().spliterator(), false)
                        .map(Directory::getName))
                .containsExactlyInAnyOrder("JPEG", "JFIF", "Huffman", "File Type");
        assertThat(latin(jpeg))
                .doesNotContain(
                        "Exif", CameraPhoto.CAMERA, CameraPhoto.COMMENT, "my address", "Belmopan", "ICC_PROFILE")
                .doesNotContain(latin(CameraPhoto.LATITUDE));
    }

    private static Metadata metadata(byte[] file) throws ImageProcessingException, IOException {
        return ImageMetadataReader.readMetadata(new ByteArrayInputStream(file));
    }

    // EXIF 2.3, tag 0112, from memory: which side of the scene the stored first row and first column are.
    @ParameterizedTest
    @CsvSource({
        "1, top, left",
        "2, top, right",
        "3, bottom, right",
        "4, bottom, left",
        "5, left, top",
        "6, right, top",
        "7, right, bottom",
        "8, left, bottom",
    })
    void the_picture_is_turned_as_the_camera_was_held(int orientation, String firstRow, String firstColumn)
            throws IOException {
        var clean = PhotoFile.clean(CameraPhoto.withNotes(CameraPhoto.plainJpeg(160, 80), orientation));

        boolean upended = orientation >= 5;
        assertThat(clean.widthPixels()).isEqualTo(upended ? 80 : 160);
        assertThat(clean.heightPixels()).isEqualTo(upended ? 160 : 80);
        for (byte[] jpeg : new byte[][] {clean.picture(), clean.thumbnail()}) {
            var image = decoded(jpeg);
            requireColour(quarter(image, firstRow, firstColumn), Color.RED);
            requireColour(quarter(image, firstRow, opposite(firstColumn)), Color.GREEN);
            requireColour(quarter(image, opposite(firstRow), firstColumn), Color.BLUE);
            requireColour(quarter(image, opposite(firstRow), opposite(firstColumn)), Color.WHITE);
        }
    }

    private static Color quarter(BufferedImage image, String side, String otherSide) {
        String sides = side + otherSide;
        int x = image.getWidth() * (sides.contains("left") ? 1 : 3) / 4;
        int y = image.getHeight() * (sides.contains("top") ? 1 : 3) / 4;
        return new Color(image.getRGB(x, y));
    }

    private static String opposite(String side) {
        return switch (side) {
            case "top" -> "bottom";
            case "bottom" -> "top";
            case "left" -> "right";
            default -> "left";
        };
    }

    private static void requireColour(Color actual, Color expected) {
        assertThat(actual.getRed()).isCloseTo(expected.getRed(), within(8));
        assertThat(actual.getGreen()).isCloseTo(expected.getGreen(), within(8));
        assertThat(actual.getBlue()).isCloseTo(expected.getBlue(), within(8));
    }

    private static BufferedImage decoded(byte[] file) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(file));
    }

    @Test
    void a_png_is_turned_by_its_own_exif_block_and_loses_it() throws Exception {
        byte[] png = CameraPhoto.withChunks(
                CameraPhoto.plainPng(60, 30),
                CameraPhoto.chunk("eXIf", CameraPhoto.exif(6)),
                CameraPhoto.chunk("tEXt", latin("Comment\0" + CameraPhoto.COMMENT)));

        var clean = PhotoFile.clean(png);

        assertThat(clean.widthPixels()).isEqualTo(30);
        requireColour(quarter(decoded(clean.picture()), "right", "top"), Color.RED);
        requireOnlyPicture(clean.picture());
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 9, 255})
    void an_orientation_that_does_not_exist_leaves_the_picture_as_it_is(int orientation) {
        var clean = PhotoFile.clean(CameraPhoto.withNotes(CameraPhoto.plainJpeg(60, 30), orientation));
        assertThat(clean.widthPixels()).isEqualTo(60);
    }

    @Test
    void a_spoilt_exif_block_does_not_cost_the_picture() {
        byte[] exif = CameraPhoto.exif(6);
        for (int kept = 0; kept < exif.length; kept++) {
            byte[] spoilt = concat(latin("Exif\0\0"), Arrays.copyOf(exif, kept));
            byte[] photo = CameraPhoto.inserted(CameraPhoto.plainJpeg(16, 8), 2, CameraPhoto.segment(0xE1, spoilt));
            assertThat(PhotoFile.clean(photo).picture())
                    .as("%d bytes of EXIF", kept)
                    .isNotEmpty();
        }
    }

    // sRGB, IEC 61966-2-1, from memory: s = 1.055 l^(1/2.4) - 0.055.
    @Test
    void a_colour_profile_is_worked_into_the_colours_and_dropped() throws Exception {
        byte[] photo = CameraPhoto.jpegInLinearLight(32, 32, 55);
        assertThat(metadata(photo).getDirectories()).hasAtLeastOneElementOfType(IccDirectory.class);

        var clean = PhotoFile.clean(photo);

        int expected = (int) Math.round(255 * (1.055 * Math.pow(55 / 255.0, 1 / 2.4) - 0.055));
        assertThat(new Color(decoded(clean.picture()).getRGB(16, 16)).getGreen())
                .isCloseTo(expected, within(3));
        requireOnlyPicture(clean.picture());
    }

    @Test
    void a_large_photo_is_reduced_to_2048_and_320_pixels_on_its_long_side() throws IOException {
        var clean = PhotoFile.clean(CameraPhoto.plainJpeg(4000, 3000));

        var picture = decoded(clean.picture());
        assertThat(picture.getWidth()).isEqualTo(2048).isEqualTo(clean.widthPixels());
        assertThat(picture.getHeight()).isEqualTo(1536).isEqualTo(clean.heightPixels());
        var thumbnail = decoded(clean.thumbnail());
        assertThat(thumbnail.getWidth()).isEqualTo(320);
        assertThat(thumbnail.getHeight()).isEqualTo(240);
    }

    @ParameterizedTest
    @CsvSource({"1, 1, 1, 1", "300, 20, 300, 20", "20, 9000, 5, 2048", "9000, 1, 2048, 1"})
    void a_small_or_narrow_photo_is_never_enlarged_and_never_vanishes(
            int width, int height, int toWidth, int toHeight) {
        var clean = PhotoFile.clean(CameraPhoto.plainPng(width, height));
        assertThat(clean.widthPixels()).isEqualTo(toWidth);
        assertThat(clean.heightPixels()).isEqualTo(toHeight);
    }

    @ParameterizedTest
    @ValueSource(
            ints = {
                BufferedImage.TYPE_BYTE_GRAY, BufferedImage.TYPE_USHORT_GRAY, BufferedImage.TYPE_BYTE_BINARY,
                BufferedImage.TYPE_BYTE_INDEXED, BufferedImage.TYPE_4BYTE_ABGR, BufferedImage.TYPE_3BYTE_BGR
            })
    void every_kind_of_png_is_taken(int imageType) throws IOException {
        var clean = PhotoFile.clean(CameraPhoto.encoded(CameraPhoto.quarters(40, 20, imageType), "png"));
        requireColour(quarter(decoded(clean.picture()), "bottom", "right"), Color.WHITE);
    }

    @Test
    void what_is_transparent_becomes_white() throws IOException {
        var glass = new BufferedImage(20, 20, BufferedImage.TYPE_INT_ARGB);
        var clean = PhotoFile.clean(CameraPhoto.encoded(glass, "png"));
        requireColour(new Color(decoded(clean.picture()).getRGB(10, 10)), Color.WHITE);
    }

    @Test
    void grey_and_progressive_jpegs_are_taken() {
        var grey = CameraPhoto.quarters(40, 20, BufferedImage.TYPE_BYTE_GRAY);
        assertThat(PhotoFile.clean(CameraPhoto.encoded(grey, "jpeg")).widthPixels())
                .isEqualTo(40);
        assertThat(PhotoFile.clean(CameraPhoto.progressiveJpeg(40, 20)).widthPixels())
                .isEqualTo(40);
    }

    @Test
    void the_fingerprint_is_that_of_the_picture() throws NoSuchAlgorithmException {
        var clean = PhotoFile.clean(PHOTO);
        byte[] digest = MessageDigest.getInstance("SHA-256").digest(clean.picture());
        assertThat(clean.sha256()).isEqualTo(HexFormat.of().formatHex(digest)).hasSize(64);
    }

    @Test
    void the_same_upload_gives_the_same_picture() {
        assertThat(PhotoFile.clean(PHOTO).sha256())
                .isEqualTo(PhotoFile.clean(PHOTO).sha256());
    }
}
