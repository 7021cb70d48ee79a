package org.demebook.telling;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.demebook.notation.RoughDate;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Statement.AncestryTold;
import org.demebook.protocol.Statement.HoldingTold;
import org.demebook.registry.Sire;
import org.jspecify.annotations.Nullable;

/** What the detail of an ancestry says; it came from another node, and what is in no form that is known is passed over. */
record ToldDetail(AncestryTold ancestry) {
    private static final int MILLIONTHS = 6;
    private static final int MILLION = 1_000_000;

    /** @param written null where the year is only for computing */
    record Born(
            @Nullable String written,
            @Nullable LocalDate earliest,
            @Nullable LocalDate latest) {}

    Granted granted() {
        return granted(ancestry.detail());
    }

    static Granted granted(ObjectNode detail) {
        return detail.has("granted") ? Granted.read(detail.get("granted")) : Granted.SKELETON;
    }

    /** What the node that holds an animal says of its number, where nobody tells its ancestry. */
    static Optional<String> number(HoldingTold holding) {
        return granted(holding.detail()).readsNumber()
                ? Optional.ofNullable(holding.detail().get("number")).map(JsonNode::textValue)
                : Optional.empty();
    }

    private Optional<String> text(String name) {
        return Optional.ofNullable(ancestry.detail().get(name)).map(JsonNode::textValue);
    }

    Optional<String> number() {
        return granted().readsNumber() ? text("number") : Optional.empty();
    }

    Optional<Born> born() {
        return text("born").flatMap(ToldDetail::born).or(() -> ancestry.born().map(ToldDetail::years));
    }

    private static Optional<Born> born(String text) {
        try {
            var born = RoughDate.parse(text);
            return Optional.of(new Born(born.toString(), born.earliest(), born.latest()));
        } catch (IllegalArgumentException | DateTimeException notOne) {
            return Optional.empty();
        }
    }

    private static Born years(String years) {
        var parts = years.split("/");
        return new Born(
                years,
                LocalDate.of(Integer.parseInt(parts[0]), 1, 1),
                LocalDate.of(Integer.parseInt(parts[parts.length - 1]), 12, 31));
    }

    Optional<AnimalId> twin() {
        return text("twin").flatMap(ToldDetail::animal);
    }

    private static Optional<AnimalId> animal(String text) {
        try {
            return Optional.of(AnimalId.parse(text));
        } catch (IllegalArgumentException notOne) {
            return Optional.empty();
        }
    }

    Sire sire(Function<AnimalId, UUID> row) {
        var sires = ancestry.sires();
        if (sires.size() == 1 && sires.get(0).share() == MILLION) {
            return new Sire.Known(
                    row.apply(sires.get(0).sire()), ancestry.detail().has("doubtful"));
        }
        if (!sires.isEmpty()) {
            return new Sire.Candidates(
                    sires.stream()
                            .map(share -> new Sire.Candidate(
                                    row.apply(share.sire()),
                                    BigDecimal.valueOf(share.share(), MILLIONTHS)
                                            .stripTrailingZeros()
                                            .toPlainString()))
                            .toList(),
                    text("draw").flatMap(ToldDetail::uuid).orElse(null));
        }
        return ancestry.dam().isPresent() && text("fusion").isPresent() ? none() : new Sire.Unknown();
    }

    private Sire none() {
        try {
            var none = new Sire.None(
                    text("fusion").orElseThrow(), text("secondDivision").orElse("0"));
            none.kindOfFusion();
            double share = Double.parseDouble(none.secondDivision());
            return share >= 0 && share <= 1 ? none : new Sire.Unknown();
        } catch (IllegalArgumentException notOne) {
            return new Sire.Unknown();
        }
    }

    private static Optional<UUID> uuid(String text) {
        try {
            return Optional.of(UUID.fromString(text));
        } catch (IllegalArgumentException notOne) {
            return Optional.empty();
        }
    }

    /** Numbers of the parents, where they may be read: each is told of by its own node first of all. */
    void parents(Map<AnimalId, String> numbers) {
        if (!granted().readsParents()) {
            return;
        }
        ancestry.dam().ifPresent(dam -> text("dam").ifPresent(number -> numbers.putIfAbsent(dam, number)));
        var sires = ancestry.detail().path("sires");
        ancestry.sires().forEach(share -> {
            var number = sires.path(share.sire().toString()).textValue();
            if (number != null) {
                numbers.putIfAbsent(share.sire(), number);
            }
        });
    }
}
