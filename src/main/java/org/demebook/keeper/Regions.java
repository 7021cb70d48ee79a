package org.demebook.keeper;

import static org.demebook.problem.ProblemType.NO_SUCH_REGION;
import static org.demebook.problem.ProblemType.REGION_IN_USE;
import static org.demebook.problem.ProblemType.REGION_NAMES_CLASH;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.keeper.KeeperFacts.RegionDistancesStated;
import org.demebook.keeper.KeeperFacts.RegionStated;
import org.demebook.keeper.KeeperFacts.RegionsFixed;
import org.demebook.keeper.RegionDistances.RegionPair;
import org.demebook.problem.Refusal;
import org.demebook.rest.Revision;
import org.jspecify.annotations.Nullable;

/** In which of the association's regions collections are, as far as they state it. */
@ApplicationScoped
public class Regions {
    /** What published counts say where no region is meant. */
    private static final Set<String> TAKEN = Set.of("all", "not stated");

    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Transactional
    public RegionsView fixed(UUID populationId) {
        return RegionList.of(populationId);
    }

    /** Fixes the regions, all of them; by a coordinator. Refuses with REGION_IN_USE and REGION_NAMES_CLASH. */
    @Transactional
    public RegionsView fix(Standing by, @Nullable String ifMatch, NewRegions regions) {
        Keepers.requireCoordinator(by);
        journal.open(by.populationId());
        var present = RegionList.of(by.populationId());
        Revision.require(ifMatch, present.revision());
        requireDistinct(regions.names());
        requireStatedKept(by, regions.names());
        if (!regions.names().equals(present.names())) {
            journal.record(
                    by.populationId(),
                    by.keeperId(),
                    new RegionsFixed(regions.names(), present.revision() == 0 ? null : present.revision()));
        }
        return RegionList.of(by.populationId());
    }

    private static void requireDistinct(List<String> names) {
        var seen = new HashSet<String>();
        for (var name : names) {
            var word = name.toLowerCase(Locale.ROOT);
            if (TAKEN.contains(word)) {
                throw new Refusal(
                        REGION_NAMES_CLASH,
                        "\"%s\" is what published counts say where no region is meant; call the region otherwise."
                                .formatted(name));
            }
            if (!seen.add(word)) {
                throw new Refusal(
                        REGION_NAMES_CLASH,
                        "\"%s\" is there twice, capitals aside; leave one of them out.".formatted(name));
            }
        }
    }

    private static void requireStatedKept(Standing by, List<String> names) {
        Collection.regions(by.populationId()).values().stream()
                .filter(region -> !names.contains(region))
                .sorted()
                .findFirst()
                .ifPresent(region -> {
                    throw new Refusal(
                            REGION_IN_USE,
                            "\"%s\" would be gone, and is stated by collections: leave it in, add the new ones beside it, and ask members to state another; once nobody does, it can go."
                                    .formatted(region));
                });
    }

    /**
     * States the region of a collection of the asker's, or with null that none is stated; the same again changes nothing.
     * Refuses with NO_SUCH_COLLECTION and NO_SUCH_REGION.
     */
    @Transactional
    public CollectionView state(Standing by, UUID collectionId, @Nullable String region) {
        journal.open(by.populationId());
        var collection = keepers.collection(by, collectionId);
        var stated = region == null ? null : require(by, region);
        if (!Objects.equals(stated, collection.region())) {
            journal.record(by.populationId(), by.keeperId(), new RegionStated(collectionId, stated));
        }
        return keepers.collection(by, collectionId);
    }

    /** A region as it was fixed; refuses with NO_SUCH_REGION. */
    @Transactional
    public String require(Standing by, String typed) {
        var region = typed.strip();
        var names = RegionList.of(by.populationId()).names();
        return names.stream()
                .filter(region::equalsIgnoreCase)
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_REGION,
                        names.isEmpty()
                                ? "\"%s\" is no region: the coordinators of %s fixed none, so that none can be stated."
                                        .formatted(region, by.populationCode())
                                : "\"%s\" is no region of %s; state one of %s, or none."
                                        .formatted(region, by.populationCode(), String.join(", ", names))));
    }

    /** What is known of how far apart the regions are that are fixed now. */
    @Transactional
    public RegionDistances distances(UUID populationId) {
        var names = RegionList.of(populationId).names();
        return new RegionDistances(RegionDistance.of(populationId).stream()
                .filter(pair -> names.contains(pair.one()) && names.contains(pair.other()))
                .toList());
    }

    @Transactional
    public long revisionOfDistances(UUID populationId) {
        return RegionDistance.revision(populationId);
    }

    /**
     * States how far apart regions are, all that is known of it; by a coordinator. Refuses with NO_SUCH_REGION and
     * REGION_NAMES_CLASH.
     */
    @Transactional
    public RegionDistances state(Standing by, @Nullable String ifMatch, RegionDistances stated) {
        Keepers.requireCoordinator(by);
        journal.open(by.populationId());
        long present = RegionDistance.revision(by.populationId());
        Revision.require(ifMatch, present);
        var pairs = new ArrayList<RegionPair>();
        for (var pair : stated.pairs()) {
            var one = require(by, pair.one());
            var other = require(by, pair.other());
            if (one.equals(other) || pairs.stream().anyMatch(earlier -> earlier.isOf(one, other))) {
                throw new Refusal(
                        REGION_NAMES_CLASH,
                        one.equals(other)
                                ? "\"%s\" stands on both sides of a pair; name two regions.".formatted(one)
                                : "\"%s\" and \"%s\" are there twice; leave one of the pairs out."
                                        .formatted(one, other));
            }
            pairs.add(new RegionPair(one, other, pair.kilometres(), pair.border()));
        }
        if (!pairs.equals(RegionDistance.of(by.populationId()))) {
            journal.record(
                    by.populationId(), by.keeperId(), new RegionDistancesStated(pairs, present == 0 ? null : present));
        }
        return distances(by.populationId());
    }

    /** The regions of the collections that state one. Never to be shown without the grants of whose they are. One query. */
    @Transactional
    public Map<UUID, String> stated(UUID populationId) {
        return Collection.regions(populationId);
    }
}
