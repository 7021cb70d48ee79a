package org.demebook.litter;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Convert;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.registry.Newborns.Parentage;
import org.demebook.registry.Sire;
import org.demebook.registry.StatedSire;
import org.demebook.registry.Twins;
import org.jspecify.annotations.Nullable;

/** The young and the ova of one birth, as its last facts left it. */
@Entity
@Table(name = "litter")
@IdClass(Litter.Key.class)
class Litter extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    UUID damId;

    @Convert(converter = SireColumn.class)
    Sire sire;

    Origin origin;
    UUID collectionId;
    RoughDate born;

    @Nullable
    LocalDate bornEarliest;

    @Nullable
    LocalDate bornLatest;

    @Embedded
    Outcome outcome;

    @Nullable
    String notes;

    UUID registeredBy;
    long revision;

    protected Litter() {}

    Litter(Entry entry, LitterFacts.LitterRegistered registered) {
        this.populationId = entry.populationId();
        this.id = registered.litterId();
        this.damId = registered.damId();
        this.sire = registered.sire();
        this.origin = registered.origin();
        this.collectionId = registered.collectionId();
        this.born = registered.born();
        this.bornEarliest = born.earliest();
        this.bornLatest = born.latest();
        this.notes = registered.notes();
        this.registeredBy = entry.actorId();
        setOutcome(entry, registered.outcome());
    }

    void setOutcome(Entry entry, Outcome stated) {
        outcome = stated;
        revision = entry.seq();
    }

    static @Nullable Litter of(UUID populationId, UUID id) {
        return findById(new Key(populationId, id));
    }

    /** @param damIds every record of one dam */
    static List<Litter> ofDam(UUID populationId, Collection<UUID> damIds) {
        return list("populationId = ?1 and damId in ?2 order by id", populationId, damIds);
    }

    Parentage parentage() {
        return new Parentage(damId, sire, origin);
    }

    /**
     * @param numbers studbook numbers of the dam and of every male that may be the sire
     * @param young studbook numbers of the live-born
     */
    LitterView view(Map<UUID, String> numbers, List<String> young, List<Twins.Pair> twins) {
        return new LitterView(
                id,
                numbers.get(damId),
                StatedSire.of(sire, numbers),
                origin,
                born,
                outcome.liveBorn(),
                outcome.malformedLive(),
                outcome.stillborn(),
                outcome.malformedStillborn(),
                outcome.partDeveloped(),
                outcome.unfertilised(),
                outcome.infertile(),
                outcome.earlyDead(),
                outcome.ovaFound(),
                young,
                twins,
                notes,
                revision);
    }
}
