package org.demebook.registry;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.journal.Entry;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.notation.SourceCode;
import org.demebook.notation.StudbookNumber;
import org.demebook.registry.LocalityClaim.Certainty;
import org.jspecify.annotations.Nullable;

/** An animal of a population, as its last facts left it. */
@Entity
@Table(name = "animal")
@IdClass(Animal.Key.class)
class Animal extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    record Numbered(UUID id, String number) {}

    record Parties(
            UUID id, @Nullable UUID collectionId, @Nullable UUID ownerCollectionId) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    String number;
    String nodeCode;
    long serial;
    Sex sex;

    @Nullable
    String sexMethod;

    @Nullable
    String sexConfidence;

    @Nullable
    RoughDate born;

    @Nullable
    LocalDate bornEarliest;

    @Nullable
    LocalDate bornLatest;

    @Nullable
    RoughDate died;

    @Nullable
    LocalDate diedEarliest;

    @Nullable
    LocalDate diedLatest;

    @Nullable
    String deathCause;

    Origin origin;

    @Nullable
    SourceCode sourceCode;

    @Nullable
    UUID damId;

    String sireKind = "unknown";

    @Nullable
    UUID sireId;

    boolean sireDoubtful;

    @Nullable
    UUID sireDrawId;

    @Nullable
    String fusion;

    @Nullable
    BigDecimal secondDivision;

    boolean removedFromDeadDam;

    @Nullable
    UUID litterId;

    boolean malformed;

    @Nullable
    String locality;

    @Nullable
    Certainty localityCertainty;

    @Nullable
    Long localitySeq;

    @Nullable
    UUID twinOfId;

    @Nullable
    TwinKind twinKind;

    @Nullable
    Long twinSeq;

    @Nullable
    UUID collectionId;

    @Nullable
    UUID transferId;

    @Nullable
    UUID crossingId;

    @Nullable
    UUID disputeId;

    @Nullable
    UUID ownerCollectionId;

    @Nullable
    UUID sameAsId;

    @Nullable
    String notes;

    UUID registeredBy;
    long parentageSeq;
    long sexSeq;
    long descriptionSeq;

    @Nullable
    Long deathSeq;

    long revision;

    protected Animal() {}

    Animal(Entry entry, UUID id, StudbookNumber number) {
        this.populationId = entry.populationId();
        this.id = id;
        this.number = number.toString();
        this.nodeCode = number.nodeCode();
        this.serial = number.serial();
        this.registeredBy = entry.actorId();
        this.parentageSeq = entry.seq();
        this.sexSeq = entry.seq();
        this.descriptionSeq = entry.seq();
        this.revision = entry.seq();
    }

    static Animal of(UUID populationId, UUID id) {
        return findById(new Key(populationId, id));
    }

    static Optional<Animal> numbered(UUID populationId, String number) {
        return find("populationId = ?1 and number = ?2", populationId, number).firstResultOptional();
    }

    static List<Animal> numbered(UUID populationId, List<String> numbers) {
        return list("populationId = ?1 and number in ?2", populationId, numbers);
    }

    static List<Animal> withIds(UUID populationId, java.util.Collection<UUID> ids) {
        return ids.isEmpty() ? List.of() : list("populationId = ?1 and id in ?2", populationId, ids);
    }

    static Map<UUID, String> numbersOf(UUID populationId, java.util.Collection<UUID> ids) {
        if (ids.isEmpty()) {
            return Map.of();
        }
        return Animal.<Animal>find("populationId = ?1 and id in ?2", populationId, ids).project(Numbered.class).stream()
                .collect(Collectors.toMap(Numbered::id, Numbered::number));
    }

    /** What the collections hold or own, in the order of ids; without numbers for which another one stands. */
    static List<Parties> partiesOf(UUID populationId, Collection<UUID> collectionIds) {
        return Animal.<Animal>find(
                        "populationId = ?1 and sameAsId is null and (collectionId in ?2 or ownerCollectionId in ?2) order by id",
                        populationId,
                        collectionIds)
                .project(Parties.class)
                .list();
    }

    /** The young of an animal, as dam or as its known sire. */
    static List<Animal> youngOf(UUID populationId, UUID parentId) {
        return list("populationId = ?1 and (damId = ?2 or sireId = ?2) order by serial", populationId, parentId);
    }

    /** The young of a dam with the same date of birth. */
    static List<Animal> littermates(UUID populationId, UUID damId, RoughDate born) {
        return list("populationId = ?1 and damId = ?2 and born = ?3 order by serial", populationId, damId, born);
    }

    static List<Animal> ofLitters(UUID populationId, java.util.Collection<UUID> litterIds) {
        return litterIds.isEmpty()
                ? List.of()
                : list("populationId = ?1 and litterId in ?2 order by nodeCode, serial", populationId, litterIds);
    }

    /** The animal itself and the records that it stands for, however long the way. */
    static List<Animal> recordsOf(UUID populationId, UUID canonicalId) {
        var records = new ArrayList<>(List.of(of(populationId, canonicalId)));
        for (int i = 0; i < records.size(); i++) {
            records.addAll(list("populationId = ?1 and sameAsId = ?2 order by id", populationId, records.get(i).id));
        }
        return records;
    }

    static List<Animal> bornOutsideLitters(UUID populationId, java.util.Collection<UUID> damIds) {
        return list(
                "populationId = ?1 and damId in ?2 and litterId is null and sameAsId is null order by nodeCode, serial",
                populationId,
                damIds);
    }

    /** Those that were stated to be a twin of one of these. */
    static List<Animal> twinsOf(UUID populationId, java.util.Collection<UUID> ids) {
        return ids.isEmpty()
                ? List.of()
                : list("populationId = ?1 and twinOfId in ?2 order by nodeCode, serial", populationId, ids);
    }

    boolean alive() {
        return died == null;
    }

    void setBorn(@Nullable RoughDate date) {
        born = date;
        bornEarliest = date == null ? null : date.earliest();
        bornLatest = date == null ? null : date.latest();
    }

    /** The notes of one owner are not shown to the next. */
    void setCustody(@Nullable UUID collection, @Nullable UUID transfer, UUID owner) {
        setCustody(collection, transfer, null, owner);
    }

    void setCustody(@Nullable UUID collection, @Nullable UUID transfer, @Nullable UUID crossing, UUID owner) {
        collectionId = collection;
        transferId = transfer;
        crossingId = crossing;
        if (!owner.equals(ownerCollectionId)) {
            notes = null;
        }
        ownerCollectionId = owner;
    }

    void setDied(@Nullable RoughDate date, @Nullable String cause) {
        died = date;
        diedEarliest = date == null ? null : date.earliest();
        diedLatest = date == null ? null : date.latest();
        deathCause = cause;
    }

    /** Takes the parentage over; candidates stand in a table of their own. */
    void setParents(@Nullable UUID dam, Sire sire) {
        damId = dam;
        sireId = null;
        sireDoubtful = false;
        sireDrawId = null;
        fusion = null;
        secondDivision = null;
        if (sire instanceof Sire.Known known) {
            sireKind = "known";
            sireId = known.sireId();
            sireDoubtful = known.doubtful();
        } else if (sire instanceof Sire.Candidates candidates) {
            sireKind = "candidates";
            sireDrawId = candidates.drawId();
        } else if (sire instanceof Sire.None none) {
            sireKind = "none";
            fusion = none.fusion();
            secondDivision = new BigDecimal(none.secondDivision());
        } else {
            sireKind = "unknown";
        }
    }

    /** Links it with a littermate from the same sac, or with none. */
    void setTwin(Entry entry, @Nullable UUID ofId, @Nullable TwinKind kind) {
        twinOfId = ofId;
        twinKind = kind;
        twinSeq = entry.seq();
    }

    /** The sire as it was stated; candidates are read from their own table. */
    Sire sire() {
        return switch (sireKind) {
            case "known" -> new Sire.Known(Objects.requireNonNull(sireId), sireDoubtful);
            case "candidates" ->
                new Sire.Candidates(
                        CandidateSire.of(populationId, List.of(id)).stream()
                                .map(candidate -> new Sire.Candidate(
                                        candidate.sireId,
                                        candidate
                                                .probability
                                                .stripTrailingZeros()
                                                .toPlainString()))
                                .toList(),
                        sireDrawId);
            case "none" ->
                new Sire.None(
                        Objects.requireNonNull(fusion),
                        Objects.requireNonNull(secondDivision)
                                .stripTrailingZeros()
                                .toPlainString());
            default -> new Sire.Unknown();
        };
    }

    Kin kin() {
        return new Kin(number, sex, born, died, sexDetermination(), removedFromDeadDam, localityClaim());
    }

    @Nullable
    LocalityClaim localityClaim() {
        return localityCertainty == null ? null : new LocalityClaim(locality, localityCertainty);
    }

    void setLocality(Entry entry, @Nullable LocalityClaim claim) {
        locality = claim == null ? null : claim.locality();
        localityCertainty = claim == null ? null : claim.certainty();
        localitySeq = claim == null ? null : Long.valueOf(entry.seq());
    }

    @Nullable
    SexDetermination sexDetermination() {
        return sexMethod == null || sexConfidence == null ? null : SexDetermination.of(sexMethod, sexConfidence);
    }

    void setSex(Sex found, @Nullable SexDetermination determination) {
        sex = found;
        sexMethod = determination == null ? null : determination.method().word();
        sexConfidence =
                determination == null ? null : determination.confidence().word();
    }
}
