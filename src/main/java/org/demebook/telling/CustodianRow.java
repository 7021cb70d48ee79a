package org.demebook.telling;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.util.UUID;

/** By what other nodes tell a collection from others: drawn by chance, and nothing follows from it. */
@Entity
@Table(name = "custodian")
@IdClass(CustodianRow.Key.class)
class CustodianRow extends PanacheEntityBase {
    record Key(UUID populationId, UUID collectionId) {}

    @Id
    UUID populationId;

    @Id
    UUID collectionId;

    String pseudonym;

    protected CustodianRow() {}

    private CustodianRow(UUID populationId, UUID collectionId) {
        this.populationId = populationId;
        this.collectionId = collectionId;
        this.pseudonym = UUID.randomUUID().toString();
    }

    static String pseudonym(UUID populationId, UUID collectionId) {
        return CustodianRow.<CustodianRow>findByIdOptional(new Key(populationId, collectionId))
                .orElseGet(() -> {
                    var row = new CustodianRow(populationId, collectionId);
                    row.persistAndFlush(); // now: later the caller may not see what others have
                    return row;
                })
                .pseudonym;
    }
}
