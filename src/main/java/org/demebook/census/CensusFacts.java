package org.demebook.census;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.demebook.census.CountReleaseView.Cell;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.jspecify.annotations.Nullable;

/** What the journal says of counts: the numbers themselves, so that they stay what they were. */
@ApplicationScoped
class CensusFacts implements FactBook {
    /**
     * @param name null in entries from before it was kept
     * @param taxon likewise
     * @param counted the animals behind the numbers, never published; likewise
     */
    record CountsReleased(
            String population,
            @Nullable String name,
            @Nullable String taxon,
            LocalDate countedOn,
            String keepers,
            List<Cell> cells,
            @Nullable String geneDiversity,
            @Nullable String founderGenomeEquivalents,
            String method,
            @Nullable List<CountedAnimal> counted)
            implements Fact {
        @Override
        public String validFrom() {
            return countedOn.toString();
        }

        CountReleaseView view(Entry entry) {
            return new CountReleaseView(
                    population,
                    name,
                    taxon,
                    countedOn,
                    entry.recordedAt(),
                    keepers,
                    cells,
                    geneDiversity,
                    founderGenomeEquivalents,
                    method);
        }
    }

    /** The parameters of disclosure control were set. */
    record CountRulesSet(
            int fewestKeepers, int percent, @Nullable Long supersedes) implements Fact {}

    /** A keeper does without the protection of their own numbers. */
    record CountProtectionWaived(UUID keeperId) implements Fact {}

    record CountWaiverWithdrawn(UUID keeperId) implements Fact {}

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(
                CountsReleased.class, CountRulesSet.class, CountProtectionWaived.class, CountWaiverWithdrawn.class);
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        var populationId = entry.populationId();
        if (fact instanceof CountsReleased released) {
            new CountRelease(populationId, released.view(entry)).persist();
            if (released.counted() != null) {
                new CountBasis(populationId, released.countedOn(), released.counted()).persist();
            }
        } else if (fact instanceof CountRulesSet set) {
            CountRules.set(populationId, set, entry.seq());
        } else if (fact instanceof CountProtectionWaived waived) {
            new CountWaiver(populationId, waived.keeperId(), entry.recordedAt()).persist();
        } else if (fact instanceof CountWaiverWithdrawn withdrawn) {
            CountWaiver.deleteById(new CountWaiver.Key(populationId, withdrawn.keeperId()));
        }
    }
}
