package org.demebook.registry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.hamcrest.Matchers.equalTo;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.exif.GpsDirectory;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.ByteArrayInputStream;
import org.demebook.Colony;
import org.demebook.photo.CameraPhoto;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(TestServer.class)
class AnimalPhotoTest {
    private static final byte[] CAMERA = CameraPhoto.withNotes(CameraPhoto.plainJpeg(160, 80), 6);

    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    @Test
    void a_photograph_is_stored_without_the_place_where_it_was_taken() throws Exception {
        var animal = colony.female(WREN);
        var upload = CAMERA;
        assertThat(ImageMetadataReader.readMetadata(new ByteArrayInputStream(upload))
                        .getFirstDirectoryOfType(GpsDirectory.class))
                .isNotNull();

        var location = as(WREN).contentType("image/jpeg")
                .queryParam("label", "left flank")
                .queryParam("takenOn", "2026-07-06")
                .body(upload)
                .post(colony.path("/animals/" + animal + "/photos"))
                .then()
                .statusCode(201)
                .body("label", equalTo("left flank"))
                .extract()
                .header("Location");

        for (var which : new String[] {"", "?thumbnail=true"}) {
            var stored = as(WREN).get(location + which)
                    .then()
                    .statusCode(200)
                    .extract()
                    .asByteArray();
            assertThat(ImageMetadataReader.readMetadata(new ByteArrayInputStream(stored))
                            .getFirstDirectoryOfType(GpsDirectory.class))
                    .isNull();
        }
        as(INES).get(location).then().statusCode(404).body("type", equalTo("/problems/no-such-photo"));
    }

    @Test
    void what_is_no_picture_is_refused() {
        var animal = colony.female(WREN);
        as(WREN).contentType("image/jpeg")
                .body("no picture at all".getBytes())
                .post(colony.path("/animals/" + animal + "/photos"))
                .then()
                .statusCode(422)
                .body("type", equalTo("/problems/unreadable-photo"));
    }

    @Test
    void only_the_holder_adds_photographs() {
        var animal = colony.female(WREN);
        as(INES).contentType("image/jpeg")
                .body(CAMERA)
                .post(colony.path("/animals/" + animal + "/photos"))
                .then()
                .statusCode(403);
    }
}
