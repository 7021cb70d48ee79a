package org.demebook.crossing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.demebook.consent.Action;
import org.demebook.consent.Audience;
import org.demebook.consent.Consents;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.consent.Purpose;
import org.demebook.crossing.HandedRecord.Forebear;
import org.demebook.crossing.HandedRecord.SireShare;
import org.demebook.federation.Federations;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.Origin;
import org.demebook.notation.StudbookNumber;
import org.demebook.notation.Words;
import org.demebook.protocol.AnimalId;
import org.demebook.registry.Animals;
import org.demebook.registry.IdentifierView;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sire;
import org.jspecify.annotations.Nullable;

/**
 * Writes what the receiver of an animal is handed: of the animal itself what its giver ticks; of its ancestors what their keepers let
 * the receiving node see for transfers. As on this node, the offer is the consent to tell the parents of the animal, by number.
 */
@ApplicationScoped
class RecordWriter {
    private static final int GENERATIONS = 5;
    private static final int WHOLE = 1_000_000;

    @Inject
    Animals animals;

    @Inject
    Keepers keepers;

    @Inject
    Consents consents;

    @Inject
    Federations federations;

    @Inject
    Clock clock;

    /** @param node code of the receiving node */
    HandedRecord write(Standing by, NewCrossing offer, UUID animalId, AnimalId federatedId, String node) {
        var animal = animals.get(by, offer.animal());
        var held = Objects.requireNonNull(animal.held());
        return new HandedRecord(
                offer.to().strip(),
                offer.isNamed() ? keepers.names(Set.of(by.keeperId())).get(by.keeperId()) : null,
                offer.kind(),
                offer.handedOverOn(),
                Words.orNull(offer.note()),
                StudbookNumber.parse(animal.number()),
                animal.sex(),
                animal.born(),
                animal.origin(),
                held.sourceCode(),
                Boolean.TRUE.equals(held.malformed()),
                animal.locality(),
                borne(held.identifiers(), "transponder", offer.tellsTransponders()),
                borne(held.identifiers(), "mark", offer.tellsMarks()),
                offer.tellsNotes() ? Words.orNull(held.notes()) : null,
                forebears(by, animalId, federatedId, node));
    }

    private static List<String> borne(List<IdentifierView> identifiers, String kind, boolean told) {
        return identifiers.stream()
                .filter(identifier -> told && identifier.kind().equals(kind))
                .map(IdentifierView::value)
                .toList();
    }

    /** What another node handed with an offer; empty once it was withdrawn. */
    Optional<HandedRecord> told(UUID populationId, UUID crossingId) {
        return federations
                .reading(populationId, participant -> participant.record(crossingId))
                .flatMap(HandedRecord::tryRead);
    }

    // ── ancestors ────────────────────────────────────────────────────────────────────────────────────────────────────

    private List<Forebear> forebears(Standing by, UUID animalId, AnimalId federatedId, String node) {
        var lens = consents.lens(Audience.node(by.populationId(), node), Purpose.TRANSFER, clock.instant());
        var told = new LinkedHashMap<UUID, PedigreeRow>();
        Set<UUID> generation = Set.of(animalId);
        for (int i = 0; i <= GENERATIONS && !generation.isEmpty(); i++) {
            var rows = rows(by.populationId(), generation);
            generation = new LinkedHashSet<>();
            for (var row : rows) {
                if (told.size() == HandedRecord.MOST_FOREBEARS || told.containsKey(row.id())) {
                    continue;
                }
                var shown = row.id().equals(animalId) || shows(lens, row, FieldGroup.PARENTAGE)
                        ? row
                        : row.withoutParentage();
                told.put(row.id(), i == GENERATIONS ? shown.withoutParentage() : shown);
                generation.addAll(parents(told.get(row.id())).keySet());
            }
        }
        var ids = new HashMap<UUID, AnimalId>();
        told.keySet()
                .forEach(id -> ids.put(
                        id,
                        id.equals(animalId) ? federatedId : federations.name(by.populationId(), by.keeperId(), id)));
        var forebears = told.values().stream()
                .map(row -> forebear(row, row.id().equals(animalId), lens, ids))
                .toList();
        consents.disclosed(lens);
        return forebears;
    }

    /** In the order of the ids that were asked for, so that nobody's name comes with the order of their numbers. */
    private List<PedigreeRow> rows(UUID populationId, Collection<UUID> ids) {
        var byId = animals.pedigreeRows(populationId, ids).stream()
                .collect(Collectors.toMap(PedigreeRow::id, Function.identity()));
        return ids.stream().map(byId::get).filter(Objects::nonNull).toList();
    }

    private static boolean shows(Lens lens, PedigreeRow row, FieldGroup group) {
        return lens.may(row.subject(), group, Action.READ);
    }

    /** By id, with their shares; the dam has none. */
    private static Map<UUID, Integer> parents(PedigreeRow row) {
        var parents = new LinkedHashMap<UUID, Integer>();
        if (row.damId() != null) {
            parents.put(row.damId(), 0);
        }
        parents.putAll(sires(row.sire()));
        return parents;
    }

    private static Map<UUID, Integer> sires(Sire sire) {
        var shares = new LinkedHashMap<UUID, Integer>();
        if (sire instanceof Sire.Known known) {
            shares.put(known.sireId(), WHOLE);
        } else if (sire instanceof Sire.Candidates candidates) {
            candidates.candidates().forEach(candidate -> shares.put(candidate.sireId(), share(candidate)));
        }
        return shares;
    }

    private static int share(Sire.Candidate candidate) {
        return Math.max(
                1,
                new BigDecimal(candidate.probability())
                        .multiply(BigDecimal.valueOf(WHOLE))
                        .intValue());
    }

    private static Forebear forebear(PedigreeRow row, boolean itself, Lens lens, Map<UUID, AnimalId> ids) {
        var known = itself || shows(lens, row, FieldGroup.IDENTITY);
        var sires = new ArrayList<SireShare>();
        sires(row.sire()).forEach((id, share) -> {
            if (ids.containsKey(id)) {
                sires.add(new SireShare(ids.get(id), share));
            }
        });
        return new Forebear(
                ids.get(row.id()),
                itself ? null : StudbookNumber.parse(row.number()),
                known ? row.sex() : null,
                known ? year(row) : null,
                row.damId() == null ? null : ids.get(row.damId()),
                sires,
                known && row.origin() == Origin.WILD_CAUGHT);
    }

    private static @Nullable Integer year(PedigreeRow row) {
        return Stream.of(row.bornEarliest(), row.bornLatest())
                .filter(Objects::nonNull)
                .findFirst()
                .map(day -> day.getYear())
                .orElse(null);
    }
}
