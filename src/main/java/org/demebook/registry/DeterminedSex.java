package org.demebook.registry;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.demebook.notation.Sex;
import org.jspecify.annotations.Nullable;

/** One determination of an animal's sex; a later one is added, none is overwritten. */
@Entity
@Table(name = "sex_determination")
@IdClass(DeterminedSex.Key.class)
class DeterminedSex extends PanacheEntityBase {
    record Key(UUID populationId, UUID animalId, long seq) {}

    @Id
    UUID populationId;

    @Id
    UUID animalId;

    /** The entry that states it. */
    @Id
    long seq;

    Sex sex;

    @Nullable
    String method;

    @Nullable
    String confidence;

    @Nullable
    LocalDate determinedOn;

    UUID determinedBy;

    protected DeterminedSex() {}

    DeterminedSex(
            Animal animal,
            long seq,
            Sex sex,
            @Nullable SexDetermination determination,
            @Nullable LocalDate determinedOn,
            UUID determinedBy) {
        this.populationId = animal.populationId;
        this.animalId = animal.id;
        this.seq = seq;
        this.sex = sex;
        this.method = determination == null ? null : determination.method().word();
        this.confidence =
                determination == null ? null : determination.confidence().word();
        this.determinedOn = determinedOn;
        this.determinedBy = determinedBy;
    }

    /** Of some animals, the last one of each first. */
    static List<DeterminedSex> of(UUID populationId, Collection<UUID> animalIds) {
        return animalIds.isEmpty()
                ? List.of()
                : list("populationId = ?1 and animalId in ?2 order by animalId, seq desc", populationId, animalIds);
    }

    @Nullable
    SexDetermination determination() {
        return method == null || confidence == null ? null : SexDetermination.of(method, confidence);
    }

    AnimalView.DeterminedSexView view() {
        return new AnimalView.DeterminedSexView(sex, method, confidence, determinedOn);
    }
}
