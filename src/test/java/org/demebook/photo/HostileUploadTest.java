package org.demebook.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.demebook.photo.CameraPhoto.concat;
import static org.demebook.photo.CameraPhoto.latin;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What {@link PhotoFile#clean} does with files that are no honest photo. */
class HostileUploadTest {
    private static final byte[] JPEG = CameraPhoto.plainJpeg(64, 48);
    private static final byte[] PNG = CameraPhoto.plainPng(64, 48);
    private static final byte[] NO_MORE = {};

    private static void requireRefused(byte[] upload, String hint) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PhotoFile.clean(upload))
                .withMessageContaining(hint);
    }

    @Test
    void an_empty_file_is_refused() {
        requireRefused(NO_MORE, "empty");
    }

    @Test
    void more_than_20_mebibytes_are_refused() {
        requireRefused(Arrays.copyOf(JPEG, PhotoFile.MOST_BYTES + 1), "larger than 20 MB");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"GIF89a", "BM", "%PDF-1.7", "PK\3\4", "<svg xmlns='http://www.w3.org/2000/svg'/>", "\u00FF\u00D8"
            })
    void what_is_neither_jpeg_nor_png_is_refused_whatever_its_name(String beginning) {
        requireRefused(concat(latin(beginning), new byte[100]), "neither a JPEG nor a PNG");
    }

    @Test
    void a_heic_photo_is_refused_with_the_way_out() {
        requireRefused(concat(latin("\0\0\0\u0018ftypheic"), new byte[100]), "as JPEG");
    }

    @Test
    void a_file_cut_off_anywhere_is_refused() {
        for (byte[] file : new byte[][] {JPEG, PNG, CameraPhoto.progressiveJpeg(64, 48)}) {
            for (int length = 8; length < file.length; length++) {
                requireRefused(Arrays.copyOf(file, length), "damaged");
            }
        }
    }

    @Test
    void a_jpeg_that_lost_coded_data_in_the_middle_is_refused() {
        byte[] photo = CameraPhoto.encoded(noise(200, 200), "jpeg");
        byte[] end = {(byte) 0xFF, (byte) 0xD9};
        requireRefused(concat(Arrays.copyOf(photo, photo.length / 2), end), "damaged");
    }

    @Test
    void a_png_with_one_bit_wrong_is_refused() {
        for (int at = 8; at < PNG.length; at++) {
            byte[] wrong = PNG.clone();
            wrong[at] ^= 1;
            assertThatIllegalArgumentException().as("byte %d", at).isThrownBy(() -> PhotoFile.clean(wrong));
        }
    }

    @Test
    void a_picture_of_more_than_40_megapixels_is_refused_by_its_header() {
        requireRefused(pngOfSize(8_000, 5_001), "8000 × 5001 pixels, more than 40 megapixels");
        requireRefused(pngOfSize(Integer.MAX_VALUE, Integer.MAX_VALUE), "more than 40 megapixels");
        requireRefused(jpegOfSize(65_500, 65_500), "65500 × 65500 pixels, more than 40 megapixels");
    }

    @Test
    void a_picture_without_width_or_height_is_refused() {
        requireRefused(pngOfSize(0, 10), "damaged");
        requireRefused(jpegOfSize(10, 0), "damaged");
    }

    @Test
    void a_picture_with_less_data_than_its_header_promises_is_refused() {
        requireRefused(pngOfSize(6_000, 6_000), "damaged");
    }

    private static byte[] pngOfSize(int width, int height) {
        byte[] header = ByteBuffer.allocate(13)
                .putInt(width)
                .putInt(height)
                .put(new byte[] {8, 2, 0, 0, 0})
                .array();
        return concat(
                Arrays.copyOf(PNG, 8),
                CameraPhoto.chunk("IHDR", header),
                CameraPhoto.chunk("IDAT", CameraPhoto.deflated(new byte[1000])),
                CameraPhoto.chunk("IEND", NO_MORE));
    }

    private static byte[] jpegOfSize(int width, int height) {
        byte[] jpeg = JPEG.clone();
        int frame = latin(jpeg).indexOf("\u00FF\u00C0");
        ByteBuffer.wrap(jpeg, frame + 5, 4).putShort((short) height).putShort((short) width);
        return jpeg;
    }

    @Test
    void texts_that_swell_when_unpacked_are_dropped_unread() {
        byte[] swelling = concat(latin("Comment\0\0"), CameraPhoto.deflated(new byte[100_000_000]));
        byte[] indexed = CameraPhoto.encoded(CameraPhoto.quarters(64, 48, BufferedImage.TYPE_BYTE_INDEXED), "png");
        byte[] photo = CameraPhoto.withChunks(indexed, CameraPhoto.chunk("zTXt", swelling));

        assertThat(latin(UploadedPicture.of(photo).essence())).doesNotContain("zTXt");
        assertThat(PhotoFile.clean(photo).widthPixels()).isEqualTo(64);
    }

    @Test
    void a_jpeg_of_far_more_layers_than_a_photo_has_is_refused() {
        byte[] jpeg = CameraPhoto.progressiveJpeg(64, 48);
        int lastScan = latin(jpeg).lastIndexOf("\u00FF\u00DA");
        byte[] scan = Arrays.copyOfRange(jpeg, lastScan, jpeg.length - 2);
        var upload = new ByteArrayOutputStream();
        upload.write(jpeg, 0, lastScan);
        for (int i = 0; i < 51; i++) {
            upload.writeBytes(scan);
        }
        upload.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xD9});
        requireRefused(upload.toByteArray(), "layers");
    }

    @Test
    void a_picture_that_is_also_an_archive_is_refused() throws IOException {
        var zip = new ByteArrayOutputStream();
        try (var out = new ZipOutputStream(zip)) {
            out.putNextEntry(new ZipEntry("Main.class"));
            out.write(new byte[] {1, 2, 3});
        }
        requireRefused(concat(JPEG, zip.toByteArray()), "hidden");
        requireRefused(concat(PNG, zip.toByteArray()), "hidden");
        requireRefused(withComment(latin(zip.toByteArray())), "hidden");
    }

    @ParameterizedTest
    @ValueSource(strings = {"%PDF-1.4", "<script>alert(1)</script>", "<HTML>", "<?php phpinfo();"})
    void a_picture_that_is_also_a_document_or_a_page_is_refused(String other) {
        requireRefused(withComment(other), "hidden");
        requireRefused(CameraPhoto.withChunks(PNG, CameraPhoto.chunk("tEXt", latin("Comment\0" + other))), "hidden");
    }

    private static byte[] withComment(String comment) {
        return CameraPhoto.inserted(JPEG, 2, CameraPhoto.segment(0xFE, latin(comment)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"MZ\u0090", "\u007FELF", "anything", "RIFF"})
    void foreign_bytes_behind_a_picture_are_refused(String tail) {
        requireRefused(concat(JPEG, latin(tail), new byte[50]), "hidden");
        requireRefused(concat(PNG, latin(tail), new byte[50]), "hidden");
    }

    // What telephones append: a preview or brightness map, a few seconds of film, the maker's own notes ending in
    // SEFT, or padding. From memory and a public list of such notes.
    @Test
    void what_telephones_put_behind_a_jpeg_is_taken_and_dropped() {
        String expected = PhotoFile.clean(JPEG).sha256();
        byte[] film = concat(latin("\0\0\0\u0018ftypmp42"), new byte[200]);
        byte[] makersNotes =
                concat(new byte[] {0, 0, 1, 10, 14, 0, 0, 0}, latin("Image_UTC_Data1700000000000SEFH____SEFT"));
        for (byte[] tail : new byte[][] {JPEG, film, makersNotes, new byte[33], concat(new byte[7], JPEG)}) {
            assertThat(PhotoFile.clean(concat(JPEG, tail)).sha256()).isEqualTo(expected);
        }
    }

    @Test
    void damage_of_any_kind_ends_in_a_picture_or_in_a_sentence() {
        long seed = 20_260_629;
        var random = new Random(seed);
        byte[][] files = {
            CameraPhoto.withNotes(CameraPhoto.plainJpeg(24, 16), 6),
            CameraPhoto.progressiveJpeg(24, 16),
            CameraPhoto.jpegInLinearLight(16, 16, 99),
            CameraPhoto.plainPng(24, 16),
        };
        for (int round = 0; round < 4_000; round++) {
            byte[] file = files[round % files.length].clone();
            for (int hits = 1 + random.nextInt(4); hits > 0; hits--) {
                file[random.nextInt(file.length)] = (byte) random.nextInt(256);
            }
            requirePictureOrSentence(file, "seed %d, round %d".formatted(seed, round));
        }
    }

    private static void requirePictureOrSentence(byte[] file, String which) {
        try {
            assertThat(PhotoFile.clean(file).picture()).as(which).isNotEmpty();
        } catch (IllegalArgumentException refusal) {
            assertThat(refusal)
                    .as(which)
                    .hasMessageMatching("(This|Something) .+; .*(upload .*again|upload that|save it as one of them).*");
        }
    }

    private static BufferedImage noise(int width, int height) {
        var image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        var random = new Random(1);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                image.setRGB(x, y, random.nextInt());
            }
        }
        return image;
    }
}
