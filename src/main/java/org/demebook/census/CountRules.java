package org.demebook.census;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.util.UUID;
import org.demebook.census.CensusFacts.CountRulesSet;
import org.jspecify.annotations.Nullable;

/** The association's parameters of disclosure control. */
@Entity
@Table(name = "count_rules")
class CountRules extends PanacheEntityBase {
    private static final int USUAL_FEWEST_KEEPERS = 3;
    private static final int USUAL_PERCENT = 20;

    @Id
    UUID populationId;

    int fewestKeepers;
    int percent;
    long revision;

    protected CountRules() {}

    static void set(UUID populationId, CountRulesSet set, long seq) {
        @Nullable CountRules present = findById(populationId);
        var rules = present == null ? new CountRules() : present;
        rules.populationId = populationId;
        rules.fewestKeepers = set.fewestKeepers();
        rules.percent = set.percent();
        rules.revision = seq;
        rules.persist();
    }

    /** What is usual, at revision 0, where nothing was set. */
    static CountRulesView of(UUID populationId) {
        @Nullable CountRules present = findById(populationId);
        return present == null
                ? new CountRulesView(USUAL_FEWEST_KEEPERS, USUAL_PERCENT, 0)
                : new CountRulesView(present.fewestKeepers, present.percent, present.revision);
    }
}
