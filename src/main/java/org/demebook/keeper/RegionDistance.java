package org.demebook.keeper;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.demebook.keeper.KeeperFacts.RegionDistancesStated;
import org.demebook.keeper.RegionDistances.RegionPair;
import org.jspecify.annotations.Nullable;

/** How far apart the regions of a population are. */
@Entity
@Table(name = "region_distance")
class RegionDistance extends PanacheEntityBase {
    @Id
    UUID populationId;

    List<String> ones = List.of();
    List<String> others = List.of();
    List<Integer> kilometres = List.of();
    List<Boolean> borders = List.of();
    long revision;

    protected RegionDistance() {}

    static void state(UUID populationId, RegionDistancesStated stated, long seq) {
        @Nullable RegionDistance present = findById(populationId);
        var row = present == null ? new RegionDistance() : present;
        row.populationId = populationId;
        row.ones = stated.pairs().stream().map(RegionPair::one).toList();
        row.others = stated.pairs().stream().map(RegionPair::other).toList();
        row.kilometres = stated.pairs().stream().map(RegionPair::kilometres).toList();
        row.borders = stated.pairs().stream().map(RegionPair::border).toList();
        row.revision = seq;
        row.persist();
    }

    static long revision(UUID populationId) {
        @Nullable RegionDistance present = findById(populationId);
        return present == null ? 0 : present.revision;
    }

    /** None where none were stated. */
    static List<RegionPair> of(UUID populationId) {
        @Nullable RegionDistance present = findById(populationId);
        return present == null
                ? List.of()
                : IntStream.range(0, present.ones.size())
                        .mapToObj(i -> new RegionPair(
                                present.ones.get(i),
                                present.others.get(i),
                                present.kilometres.get(i),
                                present.borders.get(i)))
                        .toList();
    }
}
