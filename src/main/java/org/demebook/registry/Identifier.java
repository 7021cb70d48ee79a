package org.demebook.registry;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
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

    protected Identifier() {}

    Identifier(UUID populationId, UUID animalId, IdentifierView view, @Nullable UUID collectionId) {
        this.populationId = populationId;
        this.animalId = animalId;
        this.kind = view.kind();
        this.value = view.value();
        this.collectionId = view.kind().equals(OWN_REFERENCE) ? collectionId : null;
    }

    static List<Identifier> of(UUID populationId, UUID animalId) {
        return list("populationId = ?1 and animalId = ?2 order by kind, value", populationId, animalId);
    }

    static List<Identifier> of(UUID populationId, List<UUID> animalIds) {
        return animalIds.isEmpty() ? List.of() : list("populationId = ?1 and animalId in ?2", populationId, animalIds);
    }

    /** The living animal, or at least the animal, that carries a transponder. */
    static Optional<Animal> carrier(UUID populationId, String transponder) {
        return Animal.<Animal>find(
                        "from Animal a where a.populationId = ?1 and a.died is null and a.sameAsId is null and a.id in"
                                + " (select i.animalId from Identifier i where i.populationId = ?1 and i.kind = ?2 and i.value = ?3)",
                        populationId,
                        TRANSPONDER,
                        transponder)
                .firstResultOptional();
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
        return new IdentifierView(kind, value);
    }
}
