package org.demebook.census;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import com.fasterxml.jackson.module.paramnames.ParameterNamesModule;
import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** A release as it was published, word for word. */
@Entity
@Immutable
@Table(name = "count_release")
@IdClass(CountRelease.Key.class)
class CountRelease extends PanacheEntityBase {
    static final ObjectMapper JSON = JsonMapper.builder()
            .addModule(new JavaTimeModule())
            .addModule(new ParameterNamesModule())
            .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
            .build()
            .setDefaultPropertyInclusion(JsonInclude.Include.NON_NULL);

    record Key(UUID populationId, LocalDate countedOn) {}

    @Id
    UUID populationId;

    @Id
    LocalDate countedOn;

    Instant releasedAt;
    String body;

    protected CountRelease() {}

    CountRelease(UUID populationId, CountReleaseView view) {
        this.populationId = populationId;
        this.countedOn = view.countedOn();
        this.releasedAt = view.releasedAt();
        try {
            this.body = JSON.writeValueAsString(view);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    static boolean exists(UUID populationId, LocalDate countedOn) {
        return findById(new Key(populationId, countedOn)) != null;
    }

    /** By the code of the population, since nobody has to be signed in. */
    static Optional<CountRelease> of(String populationCode, LocalDate countedOn) {
        return find(
                        "select r from CountRelease r join Population p on p.populationId = r.populationId"
                                + " where p.code = ?1 and r.countedOn = ?2",
                        populationCode,
                        countedOn)
                .firstResultOptional();
    }

    /** The latest first. */
    static List<CountRelease> of(String populationCode, @Nullable LocalDate before, int most) {
        return CountRelease.<CountRelease>find(
                        "select r from CountRelease r join Population p on p.populationId = r.populationId"
                                + " where p.code = ?1 and r.countedOn < ?2 order by r.countedOn desc",
                        populationCode,
                        before == null ? LocalDate.of(9999, 12, 31) : before)
                .page(0, most)
                .list();
    }

    /** One of each population, the latest day that was counted. */
    static List<CountRelease> latestOfEach(int most) {
        return CountRelease.<CountRelease>find(
                        "select r from CountRelease r join Population p on p.populationId = r.populationId"
                                + " where r.countedOn = (select max(o.countedOn) from CountRelease o where o.populationId = r.populationId)"
                                + " order by p.code")
                .page(0, most)
                .list();
    }

    /** All of a population in the order in which they were released. */
    static List<CountReleaseView> of(UUID populationId) {
        return CountRelease.<CountRelease>list("populationId = ?1 order by releasedAt, countedOn", populationId)
                .stream()
                .map(CountRelease::view)
                .toList();
    }

    CountReleaseView view() {
        try {
            return JSON.readValue(body, CountReleaseView.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
