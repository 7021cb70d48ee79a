package org.demebook.handover;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.registry.Sight;
import org.jspecify.annotations.Nullable;

/** A sheet that was issued, as its last fact left it. */
@Entity
@Table(name = "handover_sheet")
@IdClass(IssuedSheet.Key.class)
class IssuedSheet extends PanacheEntityBase {
    /**
     * A sheet is read by the side that gave; by whoever received the animal, or is about to, in a transfer from that side
     * that was open when the sheet was issued or began later; and by whoever holds the animal now.
     */
    private static final String SEEN = """
            select s from IssuedSheet s
            where s.populationId = :population
              and (s.fromCollectionId in :own
                or %s
                or exists
                  (select t.id from Transfer t
                   where t.populationId = :population and t.animalId = s.animalId and t.toKeeperId = :keeper
                     and t.fromCollectionId = s.fromCollectionId and (t.endedAt is null or t.endedAt >= s.issuedAt)
                     and t.state in :received))
            """.formatted(Sight.held("s.animalId"));

    record Key(UUID populationId, UUID id) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    UUID animalId;
    UUID fromCollectionId;
    UUID issuedBy;
    Instant issuedAt;
    long issuedSeq;
    String code;
    String digest;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String reason;

    long revision;

    protected IssuedSheet() {}

    IssuedSheet(Entry entry, SheetFacts.SheetIssued issued) {
        this.populationId = entry.populationId();
        this.id = issued.sheetId();
        this.animalId = issued.animalId();
        this.fromCollectionId = issued.fromCollectionId();
        this.issuedBy = entry.actorId();
        this.issuedAt = entry.recordedAt();
        this.issuedSeq = entry.seq();
        this.code = SheetDigest.code(issued.digest());
        this.digest = issued.digest();
        this.revision = entry.seq();
    }

    static IssuedSheet of(UUID populationId, UUID id) {
        return findById(new Key(populationId, id));
    }

    /** By what the paper says, before its population is known. */
    static Optional<IssuedSheet> of(String code) {
        return find("code", code).firstResultOptional();
    }

    /** @param who the parameters population, own, keeper and received */
    static Optional<IssuedSheet> seen(Map<String, Object> who, UUID id) {
        var parameters = new HashMap<>(who);
        parameters.put("id", id);
        return find(SEEN + " and s.id = :id", parameters).firstResultOptional();
    }

    /** Those of an animal, the latest first. */
    static List<IssuedSheet> seenOf(Map<String, Object> who, UUID animalId) {
        var parameters = new HashMap<>(who);
        parameters.put("animal", animalId);
        return list(SEEN + " and s.animalId = :animal order by s.issuedSeq desc", parameters);
    }

    boolean superseded() {
        return count(
                        "populationId = ?1 and animalId = ?2 and issuedSeq > ?3 and withdrawnAt is null",
                        populationId,
                        animalId,
                        issuedSeq)
                > 0;
    }
}
