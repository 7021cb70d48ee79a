package org.demebook.photo;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** The bytes of a picture and its thumbnail, kept once however often it was sent. */
@Entity
@Table(name = "photo_content")
@IdClass(PhotoContent.Key.class)
class PhotoContent extends PanacheEntityBase {
    record Key(UUID populationId, String sha256) {}

    @Id
    UUID populationId;

    @Id
    String sha256;

    byte[] picture;
    byte[] thumbnail;

    protected PhotoContent() {}

    PhotoContent(UUID populationId, PhotoFile file) {
        this.populationId = populationId;
        this.sha256 = file.sha256();
        this.picture = file.picture();
        this.thumbnail = file.thumbnail();
    }

    static @Nullable PhotoContent of(UUID populationId, String sha256) {
        return findById(new Key(populationId, sha256));
    }
}
