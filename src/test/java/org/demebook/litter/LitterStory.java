package org.demebook.litter;

import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.litter.NewLitters.litter;

import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.photo.CameraPhoto;

/** One of everything that may happen to a litter beside its birth and its correction. */
public final class LitterStory {
    private LitterStory() {}

    public static void tell(Colony colony) {
        var registered = colony.post(WREN, "/litters", litter(colony.female(WREN), "2025-06-29", 4))
                .statusCode(201);
        String id = registered.extract().path("litter.id");
        List<String> young = registered.extract().path("young.number");
        for (var kind : List.of("identical", "unclear")) {
            var numbers = kind.equals("identical") ? young.subList(0, 2) : young.subList(2, 4);
            colony.post(WREN, "/litters/" + id + "/twins", Map.of("numbers", numbers, "kind", kind))
                    .statusCode(200);
        }
        colony.post(WREN, "/litters/" + id + "/twins/withdrawal", Map.of("numbers", young.subList(0, 2)))
                .statusCode(200);
        as(WREN).contentType("image/jpeg")
                .body(CameraPhoto.plainJpeg(32, 24))
                .post(colony.path("/litters/" + id + "/photos?moment=after-separation&label=all&takenOn=2025-06-30"))
                .then()
                .statusCode(201);
    }
}
