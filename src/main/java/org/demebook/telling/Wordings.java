package org.demebook.telling;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.demebook.notation.Origin;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Statement.AncestryTold;
import org.demebook.protocol.Statement.HoldingTold;
import org.demebook.protocol.Statement.SireShare;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sire;

/**
 * What is said of an animal to who was granted how much (docs/federation/telling.md). Everything but ids, sexes and years stands in the
 * detail, and of that no more than may be read.
 *
 * @param rows by id, records that stand for others only
 * @param standsFor by the id of any record, the id of the one that stands for it
 * @param ids of those that have one between nodes
 */
record Wordings(Map<UUID, PedigreeRow> rows, Map<UUID, UUID> standsFor, Map<UUID, AnimalId> ids) {
    private static final int MILLION = 1_000_000;

    /** The records that have to have a name between nodes for this to be said. */
    Stream<UUID> named(PedigreeRow row, Granted granted) {
        if (!granted.tellsParents()) {
            return Stream.of(row.id());
        }
        return Stream.of(
                        Stream.of(row.id()),
                        Stream.ofNullable(row.damId()),
                        row.sire().animalIds().stream(),
                        Stream.ofNullable(row.twinOfId()))
                .flatMap(all -> all)
                .map(standsFor::get);
    }

    private AnimalId id(UUID record) {
        return ids.get(standsFor.get(record));
    }

    private String number(UUID record) {
        return rows.get(standsFor.get(record)).number();
    }

    /** @param everybody whether it is public */
    AncestryTold ancestry(PedigreeRow row, Granted granted, boolean everybody) {
        boolean parents = granted.tellsParents();
        return new AncestryTold(
                id(row.id()),
                born(row),
                parents ? Optional.ofNullable(row.damId()).map(this::id) : Optional.empty(),
                parents ? sires(row.sire()) : List.of(),
                row.origin() == Origin.WILD_CAUGHT,
                detail(row, granted, everybody));
    }

    /** Of one that another node registered it says, too, what its keeper here grants. */
    HoldingTold holding(PedigreeRow row, String custodian, Granted granted, boolean everybody, boolean registeredHere) {
        var detail = JsonNodeFactory.instance.objectNode();
        if (everybody) {
            Telling.mark(detail);
        }
        if (!registeredHere) {
            if (!granted.equals(Granted.SKELETON)) {
                detail.set("granted", granted.json());
            }
            if (granted.readsNumber()) {
                detail.put("number", row.number());
            }
        }
        return new HoldingTold(id(row.id()), row.sex().word(), row.alive(), custodian, detail);
    }

    private static Optional<String> born(PedigreeRow row) {
        if (row.bornEarliest() == null || row.bornLatest() == null) {
            return Optional.empty();
        }
        var first = year(row.bornEarliest().getYear());
        var last = year(row.bornLatest().getYear());
        return Optional.of(first.equals(last) ? first : first + "/" + last);
    }

    private static String year(int year) {
        return String.format(Locale.ROOT, "%04d", year);
    }

    private List<SireShare> sires(Sire sire) {
        if (sire instanceof Sire.Known known) {
            return List.of(new SireShare(id(known.sireId()), MILLION));
        }
        return sire instanceof Sire.Candidates several
                ? several.candidates().stream()
                        .map(candidate -> new SireShare(id(candidate.sireId()), share(candidate.value())))
                        .toList()
                : List.of();
    }

    private static int share(BigDecimal probability) {
        return Math.max(
                1, probability.movePointRight(6).setScale(0, RoundingMode.FLOOR).intValueExact());
    }

    private ObjectNode detail(PedigreeRow row, Granted granted, boolean everybody) {
        var detail = JsonNodeFactory.instance.objectNode();
        if (everybody) {
            Telling.mark(detail);
        }
        if (!granted.equals(Granted.SKELETON)) {
            detail.set("granted", granted.json());
        }
        if (granted.readsNumber()) {
            detail.put("number", row.number());
            if (row.born() != null) {
                detail.put("born", row.born());
            }
        }
        if (granted.tellsParents()) {
            birth(row, detail);
        }
        if (granted.readsParents()) {
            if (row.damId() != null) {
                detail.put("dam", number(row.damId()));
            }
            var sires =
                    row.sire().animalIds().stream().map(this::number).sorted().toList();
            if (!sires.isEmpty()) {
                var numbers = detail.putObject("sires");
                row.sire().animalIds().stream()
                        .sorted()
                        .forEach(sire -> numbers.put(id(sire).toString(), number(sire)));
            }
            if (row.sire() instanceof Sire.Known known && known.doubtful()) {
                detail.put("doubtful", 1);
            }
        }
        return detail;
    }

    /** What figures want beside the parents. */
    private void birth(PedigreeRow row, ObjectNode detail) {
        if (row.twinOfId() != null) {
            detail.put("twin", id(row.twinOfId()).toString());
        }
        if (row.sire() instanceof Sire.None none) {
            detail.put("fusion", none.fusion()).put("secondDivision", none.secondDivision());
        } else if (row.sire() instanceof Sire.Candidates several && several.drawId() != null) {
            detail.put("draw", several.drawId().toString());
        }
    }
}
