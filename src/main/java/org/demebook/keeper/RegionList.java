package org.demebook.keeper;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.util.List;
import java.util.UUID;
import org.demebook.keeper.KeeperFacts.RegionsFixed;
import org.jspecify.annotations.Nullable;

/** The regions that an association fixed for its population. */
@Entity
@Table(name = "region_list")
class RegionList extends PanacheEntityBase {
    @Id
    UUID populationId;

    List<String> names = List.of();
    long revision;

    protected RegionList() {}

    static void fix(UUID populationId, RegionsFixed fixed, long seq) {
        @Nullable RegionList present = findById(populationId);
        var list = present == null ? new RegionList() : present;
        list.populationId = populationId;
        list.names = List.copyOf(fixed.names());
        list.revision = seq;
        list.persist();
    }

    /** None, at revision 0, where none were fixed. */
    static RegionsView of(UUID populationId) {
        @Nullable RegionList present = findById(populationId);
        return present == null
                ? new RegionsView(List.of(), 0)
                : new RegionsView(List.copyOf(present.names), present.revision);
    }
}
