package org.demebook.diary;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Convert;
import jakarta.persistence.Converter;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.notation.TextColumn;
import org.demebook.registry.Sight;
import org.jspecify.annotations.Nullable;

/** A care record, as its last facts left it. */
@Entity
@Table(name = "care_record")
@IdClass(CareRecordRow.Key.class)
class CareRecordRow extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    /** Written for a collection of the asker's, or gone along with an animal that they hold now. */
    private static final String SEEN = "populationId = :population and (collectionId in :own or kind in :along and "
            + Sight.held("animalId") + ")";

    @Id
    UUID populationId;

    @Id
    UUID id;

    UUID animalId;
    UUID collectionId;
    String kind;
    LocalDate happenedOn;

    @Column(name = "body")
    @Convert(converter = Body.class)
    CareRecord record;

    boolean withdrawn;
    long revision;

    /** The entry that says the words of the record. */
    @Nullable
    Long wordsSeq;

    protected CareRecordRow() {}

    CareRecordRow(Entry entry, UUID id, UUID animalId, UUID collectionId, CareRecord record) {
        this.populationId = entry.populationId();
        this.id = id;
        this.animalId = animalId;
        this.collectionId = collectionId;
        say(entry, record);
    }

    void set(Entry entry, CareRecord stated) {
        record = stated;
        kind = stated.kind();
        happenedOn = stated.on();
        revision = entry.seq();
    }

    void say(Entry entry, CareRecord stated) {
        set(entry, stated);
        wordsSeq = entry.seq();
    }

    static CareRecordRow of(UUID populationId, UUID id) {
        return findById(new Key(populationId, id));
    }

    /** One that those who act for the given collections see, withdrawn or not. */
    static @Nullable CareRecordRow seen(UUID populationId, Set<UUID> own, UUID id) {
        var parameters = parameters(populationId, own);
        parameters.put("id", id);
        return CareRecordRow.<CareRecordRow>find(SEEN + " and id = :id", parameters)
                .firstResult();
    }

    /** All of some animals that those who act for the given collections see, in the order in which they happened. */
    static List<CareRecordRow> seen(UUID populationId, Set<UUID> own, java.util.Collection<UUID> animalIds) {
        if (animalIds.isEmpty()) {
            return List.of();
        }
        var parameters = parameters(populationId, own);
        parameters.put("animals", animalIds);
        return list(SEEN + " and not withdrawn and animalId in :animals order by happenedOn, id", parameters);
    }

    /** Those of the given collections that were changed last by these entries and are not withdrawn, in that order. */
    static List<CareRecordRow> written(UUID populationId, Set<UUID> own, CareRecords.Span entries) {
        return list(
                "populationId = ?1 and collectionId in ?2 and revision between ?3 and ?4 and not withdrawn order by revision",
                populationId,
                own,
                entries.from(),
                entries.until());
    }

    /**
     * The latest of one animal that those who act for the given collections see, the latest first.
     *
     * @param beforeOn with {@code beforeId}: only what comes after that one in the list
     */
    static List<CareRecordRow> latest(
            UUID populationId,
            Set<UUID> own,
            UUID animalId,
            @Nullable String kind,
            @Nullable LocalDate beforeOn,
            @Nullable UUID beforeId,
            int most) {
        var parameters = parameters(populationId, own);
        parameters.put("animal", animalId);
        var where = new StringBuilder(SEEN + " and not withdrawn and animalId = :animal");
        if (kind != null) {
            where.append(" and kind = :kind");
            parameters.put("kind", kind);
        }
        if (beforeOn != null && beforeId != null) {
            where.append(" and (happenedOn < :day or happenedOn = :day and id < :before)");
            parameters.put("day", beforeOn);
            parameters.put("before", beforeId);
        }
        return CareRecordRow.<CareRecordRow>find(where + " order by happenedOn desc, id desc", parameters)
                .page(0, most)
                .list();
    }

    static Set<UUID> animalsWith(UUID populationId, Set<UUID> own, List<String> kinds) {
        var query = getEntityManager()
                .createQuery(
                        "select distinct animalId from CareRecordRow where kind in :kinds and not withdrawn and "
                                + SEEN,
                        UUID.class)
                .setParameter("kinds", kinds);
        parameters(populationId, own).forEach(query::setParameter);
        return Set.copyOf(query.getResultList());
    }

    /** The tests of a population, in the order in which the samples were taken. */
    static List<CareRecordRow> tests(UUID populationId) {
        return list("populationId = ?1 and kind = 'test' and not withdrawn order by happenedOn, id", populationId);
    }

    private static Map<String, Object> parameters(UUID populationId, Set<UUID> own) {
        var parameters = new HashMap<String, Object>();
        parameters.put("population", populationId);
        parameters.put("own", own);
        parameters.put("along", CareRecord.KINDS_THAT_GO_ALONG);
        return parameters;
    }

    /** The record in the words that it has in the journal. */
    @Converter
    static class Body extends TextColumn<CareRecord> {
        private static final ObjectMapper JSON = JsonMapper.builder()
                .addModule(new JavaTimeModule())
                .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
                .build()
                .setDefaultPropertyInclusion(JsonInclude.Include.NON_NULL);

        Body() {
            super(Body::write, Body::read);
        }

        private static String write(CareRecord record) {
            try {
                return JSON.writerFor(CareRecord.class).writeValueAsString(record);
            } catch (JsonProcessingException e) {
                throw new IllegalStateException(e);
            }
        }

        private static CareRecord read(String text) {
            try {
                return JSON.readValue(text, CareRecord.class);
            } catch (JsonProcessingException e) {
                throw new IllegalStateException(e);
            }
        }
    }
}
