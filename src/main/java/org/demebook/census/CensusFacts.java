package org.demebook.census;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.demebook.census.CountReleaseView.Cell;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.jspecify.annotations.Nullable;

/** What the journal says of counts: the numbers themselves, so that they stay what they were. */
@ApplicationScoped
class CensusFacts implements FactBook {
    record CountsReleased(
            String population,
            LocalDate countedOn,
            String keepers,
            List<Cell> cells,
            @Nullable String geneDiversity,
            @Nullable String founderGenomeEquivalents,
            String method)
            implements Fact {
        @Override
        public String validFrom() {
            return countedOn.toString();
        }

        CountReleaseView view(Entry entry) {
            return new CountReleaseView(
                    population,
                    countedOn,
                    entry.recordedAt(),
                    keepers,
                    cells,
                    geneDiversity,
                    founderGenomeEquivalents,
                    method);
        }
    }

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(CountsReleased.class);
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof CountsReleased released) {
            new CountRelease(entry.populationId(), released.view(entry)).persist();
        }
    }
}
