package org.demebook.ancestry;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import org.demebook.keeper.Standing;

/**
 * The living animals of a population as one pool of genes, today and over the years, as far as the asker may see them or have them
 * computed with. Kept for all who may see the same, until something happens in the population.
 */
@ApplicationScoped
public class GenePools {
    private static final int KEPT = 200;

    /** @param snapshot identity of the one that answers */
    private record Question(Object snapshot, LocalDate today) {}

    /** Today and over time. */
    public record GenePoolFigures(GenePoolView today, PoolOverTime overTime) {}

    @Inject
    Ancestries ancestries;

    @Inject
    Clock clock;

    private final Cache<Question, GenePoolFigures> kept =
            Caffeine.newBuilder().maximumSize(KEPT).build();

    /** O(years · population) when it is asked first. */
    public GenePoolFigures of(Standing by) {
        var snapshot = ancestries.seen(by, clock.instant());
        var today = LocalDate.now(clock);
        return kept.get(
                new Question(snapshot.identity(), today),
                question -> new GenePoolFigures(AncestryViews.genePool(snapshot), OverTime.of(snapshot, today)));
    }
}
