package org.demebook.registry;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.util.UUID;
import org.demebook.taxon.BirthMode;
import org.demebook.taxon.TaxonProfile;

/** The animals of one taxon from one locality, managed as one breeding unit. */
@Entity
@Table(name = "population")
class Population extends PanacheEntityBase {
    @Id
    UUID populationId;

    String code;
    String name;
    String taxon;
    String locality;
    BirthMode birthMode;
    TaxonProfile profile;
    UUID foundedBy;
    long revision;

    protected Population() {}

    Population(UUID populationId, String code, UUID foundedBy) {
        this.populationId = populationId;
        this.code = code;
        this.foundedBy = foundedBy;
    }

    PopulationView view() {
        return new PopulationView(code, name, taxon, locality, birthMode, profile, revision);
    }
}
