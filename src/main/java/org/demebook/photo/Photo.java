package org.demebook.photo;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.jspecify.annotations.Nullable;

/** A photograph of an animal or of a litter; the picture itself stands in {@link PhotoContent}, by its digest. */
@Entity
@Table(name = "photo")
@IdClass(Photo.Key.class)
class Photo extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    @Nullable
    UUID animalId;

    @Nullable
    UUID litterId;

    @Nullable
    Moment moment;

    String sha256;

    @Nullable
    String label;

    @Nullable
    LocalDate takenOn;

    int widthPixels;
    int heightPixels;
    UUID addedBy;

    protected Photo() {}

    Photo(Entry entry, Subject subject, TakenPhoto taken) {
        this.populationId = entry.populationId();
        this.id = taken.photoId();
        this.animalId = subject.animalId();
        this.litterId = subject.litterId();
        this.moment = subject.moment();
        this.sha256 = taken.sha256();
        this.label = taken.label();
        this.takenOn = taken.takenOn();
        this.widthPixels = taken.widthPixels();
        this.heightPixels = taken.heightPixels();
        this.addedBy = entry.actorId();
    }

    static @Nullable Photo of(UUID populationId, UUID id) {
        return findById(new Key(populationId, id));
    }

    static List<Photo> ofAnimals(UUID populationId, Collection<UUID> animalIds) {
        return animalIds.isEmpty()
                ? List.of()
                : list("populationId = ?1 and animalId in ?2 order by id", populationId, animalIds);
    }

    static List<Photo> ofLitter(UUID populationId, UUID litterId) {
        return list("populationId = ?1 and litterId = ?2 order by id", populationId, litterId);
    }

    PhotoView view() {
        return new PhotoView(id, moment, label, takenOn, widthPixels, heightPixels);
    }
}
