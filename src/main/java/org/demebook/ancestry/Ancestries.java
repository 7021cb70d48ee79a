package org.demebook.ancestry;

import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.locks.ReentrantLock;
import java.util.stream.IntStream;
import org.demebook.consent.Action;
import org.demebook.consent.Audience;
import org.demebook.consent.Consents;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Purpose;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;
import org.demebook.registry.Animals;
import org.demebook.registry.Elsewhere;
import org.demebook.registry.PedigreeRow;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** The populations of this node as pedigrees, and what they tell of one animal, of two, and of all that are alive. */
@ApplicationScoped
public class Ancestries {
    private static final Logger LOG = Logger.getLogger(Ancestries.class);
    private static final int POPULATIONS_IN_MEMORY = 16;
    private static final int GENERATIONS_OF_OTHERS = 4;

    @Inject
    Animals animals;

    @Inject
    ToldElsewhere toldElsewhere;

    @Inject
    Consents consents;

    @Inject
    Clock clock;

    private final SeenSnapshots seen = new SeenSnapshots();

    private final Cache<UUID, Slot> slots =
            Caffeine.newBuilder().maximumSize(POPULATIONS_IN_MEMORY).build();

    /** The place of one population: a single loader at a time, whose work those who wait use too. */
    private static final class Slot {
        final ReentrantLock loading = new ReentrantLock();
        volatile @Nullable Loaded latest;
    }

    /** @param elsewhere what other nodes had told when it was made */
    private record Loaded(Snapshot snapshot, Elsewhere elsewhere) {
        boolean isOf(long head, long told) {
            return snapshot.head() >= head && elsewhere.version() == told;
        }
    }

    /**
     * All of the population, whoever may see it: for what rests on all of it by its nature, and never for an answer to one
     * asker, which rests on {@link #seen}.
     *
     * <p>As it was when the standing was read, or later. Costs nothing while the journal stands still. After births, deaths
     * and moves the records that they touched are read and added, after a changed parentage the whole population is read;
     * either once for all who ask, and computed outside any transaction. Populations do not wait for each other.
     */
    public Snapshot whole(Standing by) {
        var slot = slots.get(by.populationId(), population -> new Slot());
        long told = toldElsewhere.version(by.populationId());
        var present = slot.latest;
        if (present != null && present.isOf(by.head(), told)) {
            return present.snapshot();
        }
        slot.loading.lock();
        try {
            var loaded = slot.latest;
            if (loaded == null || !loaded.isOf(by.head(), told)) {
                loaded = load(by.populationId(), loaded);
                slot.latest = loaded;
            }
            return loaded.snapshot();
        } finally {
            slot.loading.unlock();
        }
    }

    /**
     * The population as the asker may see it, or have it computed with, when they look at where animals come from: see
     * docs/methods/kinship-under-consent.md. The whole one where they may see all of it.
     *
     * <p>Kept, and shared by all who may see the same, until something happens in the population or a grant begins or ends;
     * made anew in O(population).
     */
    public Snapshot seen(Standing by, Instant at) {
        return seen(by, Purpose.PEDIGREE_VIEW, at);
    }

    /** The same for another purpose. */
    public Snapshot seen(Standing by, Purpose purpose, Instant at) {
        var whole = whole(by);
        return seen.of(whole, consents.lens(by, purpose, at));
    }

    /** The population as far as its keepers let anybody count it and compute with it for what is published. */
    public Snapshot published(Standing by, Instant at) {
        var everybody = Audience.PUBLIC(by.populationId());
        return seen.of(whole(by), consents.lens(everybody, Purpose.PUBLIC_COUNTS, at));
    }

    /** Writes down for their keepers that these rows are shown, each with its parents. */
    public void disclosed(Standing by, Purpose purpose, Instant at, Snapshot snapshot, IntStream rows) {
        var lens = consents.lens(by, purpose, at);
        rows.filter(snapshot::isShown).forEach(row -> {
            lens.may(snapshot.subject(row), FieldGroup.IDENTITY, Action.READ);
            lens.may(snapshot.subject(row), FieldGroup.PARENTAGE, Action.READ);
        });
        consents.disclosed(lens);
    }

    private Loaded load(UUID populationId, @Nullable Loaded before) {
        var elsewhere = toldElsewhere.of(populationId);
        return before != null && before.elsewhere().version() == elsewhere.version()
                ? readOn(populationId, before)
                : read(populationId, elsewhere);
    }

    private Loaded readOn(UUID populationId, Loaded loaded) {
        long began = System.nanoTime();
        var before = loaded.snapshot();
        var elsewhere = loaded.elsewhere();
        var touched = new ArrayList<PedigreeRow>();
        long head = animals.changedSince(populationId, before.head(), touched::add);
        var after = before.after(head, Together.touched(touched, elsewhere, before.records()));
        LOG.debugf("carried on to %s in %.2f ms", after, (System.nanoTime() - began) / 1e6);
        return after.map(snapshot -> new Loaded(snapshot, elsewhere)).orElseGet(() -> read(populationId, elsewhere));
    }

    private Loaded read(UUID populationId, Elsewhere elsewhere) {
        long began = System.nanoTime();
        var here = new ArrayList<PedigreeRow>();
        long head = animals.eachOf(populationId, here::add);
        var snapshot = Snapshot.of(head, Records.of(Together.of(here, elsewhere), elsewhere.possiblySame()));
        LOG.debugf("read %s in %.1f ms", snapshot, (System.nanoTime() - began) / 1e6);
        return new Loaded(snapshot, elsewhere);
    }

    /**
     * Where an animal comes from, as far as the asker may see it; refuses with MISTYPED_NUMBER or NO_SUCH_ANIMAL.
     *
     * @param generations how far back the ancestors are listed; 0 for the figures alone
     */
    public AncestryView ancestry(Standing by, String number, int generations) {
        var snapshot = seen(by, clock.instant());
        return AncestryViews.ancestry(snapshot, row(by, snapshot, number), generations);
    }

    /**
     * The row of an animal by its number as somebody typed it. Refuses with MISTYPED_NUMBER, or with NO_SUCH_ANIMAL whether
     * there is none or the asker may not see it.
     */
    public int row(Standing by, Snapshot snapshot, String typed) {
        return snapshot.row(typed).orElseGet(() -> {
            var number = Animals.number(typed).toString();
            return snapshot.row(number)
                    .orElseThrow(() -> new Refusal(
                            NO_SUCH_ANIMAL,
                            "No animal of %s has the number %s.".formatted(by.populationCode(), number)));
        });
    }

    /** Where an animal comes from, with what a chart of it wants; told to the keepers of what is shown. */
    public ChartedAncestry charted(Standing by, String number, int generations) {
        var at = clock.instant();
        var snapshot = seen(by, at);
        int row = row(by, snapshot, number);
        var listed = AncestryViews.ancestors(snapshot, row, generations).keySet();
        disclosed(by, Purpose.PEDIGREE_VIEW, at, snapshot, listed.stream().mapToInt(Integer::intValue));
        return ChartedAncestry.of(snapshot, row, generations, listed);
    }

    /**
     * How an animal is related to others, the closest first; one that the asker may not see is left out. Told to the keepers of
     * what is shown. O(ancestors) for each.
     */
    public List<RelationView> relations(Standing by, String number, Collection<String> others) {
        var at = clock.instant();
        var snapshot = seen(by, at);
        int row = row(by, snapshot, number);
        int[] rows = others.stream()
                .flatMap(other -> snapshot.row(other).stream())
                .mapToInt(Integer::intValue)
                .filter(other -> other != row)
                .distinct()
                .toArray();
        disclosed(by, Purpose.PEDIGREE_VIEW, at, snapshot, IntStream.concat(IntStream.of(row), IntStream.of(rows)));
        return RelationView.of(snapshot, row, rows);
    }

    /** Where an animal of another node comes from, as far as the asker may see it; empty for one of this node, and for any other. */
    public Optional<ElsewhereView> elsewhere(Standing by, String number) {
        var at = clock.instant();
        var snapshot = seen(by, at);
        return snapshot.row(Animals.number(number).toString())
                .filter(row -> snapshot.node(row) != null)
                .map(row -> new ElsewhereView(
                        Objects.requireNonNull(snapshot.node(row)),
                        AncestryViews.ancestry(snapshot, row, GENERATIONS_OF_OTHERS)));
    }

    /** The young of an animal, as far as the asker sees them and whose they are, in the order of their numbers. O(population). */
    public List<YoungView> young(Standing by, String number) {
        var at = clock.instant();
        var snapshot = seen(by, at);
        int row = row(by, snapshot, number);
        int[] young = YoungView.rows(snapshot, row);
        disclosed(by, Purpose.PEDIGREE_VIEW, at, snapshot, IntStream.of(young));
        return IntStream.of(young)
                .mapToObj(one -> YoungView.of(snapshot, one, row))
                .toList();
    }
}
