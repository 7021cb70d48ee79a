package org.demebook.census;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** The animals behind a release, as they were counted; never published. */
@Entity
@Immutable
@Table(name = "count_basis")
@IdClass(CountRelease.Key.class)
class CountBasis extends PanacheEntityBase {
    @Id
    UUID populationId;

    @Id
    LocalDate countedOn;

    String body;

    protected CountBasis() {}

    CountBasis(UUID populationId, LocalDate countedOn, List<CountedAnimal> counted) {
        this.populationId = populationId;
        this.countedOn = countedOn;
        try {
            this.body = CountRelease.JSON.writeValueAsString(counted);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Empty for a release that was made before the animals were kept. */
    static Optional<List<CountedAnimal>> of(UUID populationId, LocalDate countedOn) {
        return CountBasis.<CountBasis>findByIdOptional(new CountRelease.Key(populationId, countedOn))
                .map(CountBasis::counted);
    }

    private List<CountedAnimal> counted() {
        try {
            return CountRelease.JSON.readValue(body, new TypeReference<List<CountedAnimal>>() {});
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
