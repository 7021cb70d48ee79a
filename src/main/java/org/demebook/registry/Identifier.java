package org.demebook.registry;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.notation.Transponder;
import org.jspecify.annotations.Nullable;

/** What an animal is known by besides its number: a transponder, a mark, a keeper's own reference. */
@Entity
@Table(name = "identifier")
@IdClass(Identifier.Key.class)
class Identifier extends PanacheEntityBase {
    static final String TRANSPONDER = "transponder";
    static final String MARK = "mark";
    static final String OWN_REFERENCE = "own-reference";

    record Key(UUID populationId, UUID animalId, String kind, String value) {}

    @Id
    UUID populationId;

    @Id
    UUID animalId;

    @Id
    String kind;

    @Id
    String value;

    @Nullable
    UUID collectionId;

    @Nullable
    String written;

    /** The entry that says so. */
    @Nullable
    Long addedSeq;

    protected Identifier() {}

    Identifier(Entry entry, UUID animalId, IdentifierView view, @Nullable UUID collectionId) {
        this.populationId = entry.populationId();
        this.addedSeq = entry.seq();
        this.animalId = animalId;
        this.kind = view.kind();
        this.value = view.value();
        this.written = view.written();
        this.collectionId = view.kind().equals(OWN_REFERENCE) ? collectionId : null;
    }

    static List<Identifier> of(UUID populationId, UUID animalId) {
        return list("populationId = ?1 and animalId = ?2 order by kind, value", populationId, animalId);
    }

    static List<Identifier> of(UUID populationId, List<UUID> animalIds) {
        return animalIds.isEmpty() ? List.of() : list("populationId = ?1 and animalId in ?2", populationId, animalIds);
    }

    /** A transponder, and the living animal that carries it. */
    record Carried(String code, Animal animal) {}

    /** The living animals that carry one of these transponders, by the code. */
    static List<Carried> carried(UUID populationId, Collection<String> codes) {
        return getEntityManager()
                .createQuery(
                        "select i.value, a from Identifier i, Animal a where i.populationId = :population"
                                + " and i.kind = :kind and i.value in :codes and a.populationId = i.populationId"
                                + " and a.id = i.animalId and a.died is null and a.sameAsId is null"
                                + " order by i.value, a.number",
                        Carried.class)
                .setParameter("population", populationId)
                .setParameter("kind", TRANSPONDER)
                .setParameter("codes", codes)
                .getResultList();
    }

    static boolean shareTransponder(UUID populationId, UUID animalId, UUID otherId) {
        var codes = of(populationId, animalId).stream()
                .filter(identifier -> identifier.kind.equals(TRANSPONDER))
                .map(identifier -> identifier.value)
                .toList();
        return of(populationId, otherId).stream()
                .anyMatch(identifier -> identifier.kind.equals(TRANSPONDER) && codes.contains(identifier.value));
    }

    static Optional<Identifier> reference(UUID populationId, UUID collectionId, String value) {
        return find(
                        "populationId = ?1 and collectionId = ?2 and kind = ?3 and value = ?4",
                        populationId,
                        collectionId,
                        OWN_REFERENCE,
                        value)
                .firstResultOptional();
    }

    IdentifierView view() {
        var scheme = kind.equals(TRANSPONDER) ? Transponder.parse(value).scheme() : null;
        return new IdentifierView(kind, value, scheme, written);
    }
}
