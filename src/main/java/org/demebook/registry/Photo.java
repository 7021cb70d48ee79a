package org.demebook.registry;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.jspecify.annotations.Nullable;

/** A photograph of an animal; the picture itself stands in {@link PhotoContent}, by its digest. */
@Entity
@Table(name = "photo")
@IdClass(Photo.Key.class)
class Photo extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    UUID animalId;
    String sha256;

    @Nullable
    String label;

    @Nullable
    LocalDate takenOn;

    int widthPixels;
    int heightPixels;
    UUID addedBy;

    protected Photo() {}

    Photo(Entry entry, AnimalFacts.PhotoAdded added) {
        this.populationId = entry.populationId();
        this.id = added.photoId();
        this.animalId = added.animalId();
        this.sha256 = added.sha256();
        this.label = added.label();
        this.takenOn = added.takenOn();
        this.widthPixels = added.widthPixels();
        this.heightPixels = added.heightPixels();
        this.addedBy = entry.actorId();
    }

    static @Nullable Photo of(UUID populationId, UUID id) {
        return findById(new Key(populationId, id));
    }

    static List<Photo> of(UUID populationId, List<UUID> animalIds) {
        return animalIds.isEmpty()
                ? List.of()
                : list("populationId = ?1 and animalId in ?2 order by id", populationId, animalIds);
    }

    PhotoView view() {
        return new PhotoView(id, label, takenOn, widthPixels, heightPixels);
    }
}
