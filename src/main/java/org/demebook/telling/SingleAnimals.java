package org.demebook.telling;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.DateTimeException;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.demebook.federation.Federations;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.notation.StudbookNumber;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Statement.AncestryTold;
import org.demebook.protocol.Statement.HoldingTold;
import org.demebook.protocol.Told;
import org.demebook.telling.ToldAnimal.ToldSire;
import org.jspecify.annotations.Nullable;

/** What was told of single animals, for a room that takes them into the register. It came from others: what cannot be read is not told. */
@ApplicationScoped
public class SingleAnimals {
    @Inject
    Federations federations;

    @Inject
    ToldAnimals rows;

    /** Of some animals of a shared population, in their order. O(everything that was told). */
    public Map<AnimalId, ToldAnimal> of(UUID population, Collection<AnimalId> animals) {
        var told = federations.reading(population, part -> ToldAnimals.everything(part, federations.nodeId()));
        var read = new LinkedHashMap<AnimalId, ToldAnimal>();
        animals.forEach(animal -> read.put(animal, read(animal, told)));
        return read;
    }

    /** One of them has a record in this register from now on: figures are read anew when the present transaction holds. */
    public void standsHere(UUID population) {
        rows.moveOn(population);
    }

    private static ToldAnimal read(AnimalId animal, Told told) {
        var ancestry = Optional.ofNullable(told.ancestry().get(animal));
        var holding = Optional.ofNullable(told.holdings().get(animal));
        var detail = ancestry.map(ToldDetail::new);
        var granted = detail.map(ToldDetail::granted)
                .or(() -> holding.map(of -> ToldDetail.granted(of.detail())))
                .orElse(Granted.NOTHING);
        if (!granted.readsNumber()) {
            return ToldAnimal.NOTHING;
        }
        var numbers = new HashMap<AnimalId, String>();
        detail.ifPresent(of -> of.parents(numbers));
        return new ToldAnimal(
                detail.flatMap(ToldDetail::number)
                        .or(() -> holding.flatMap(ToldDetail::number))
                        .flatMap(SingleAnimals::number)
                        .orElse(null),
                holding.map(of -> Sex.parse(of.sex())).orElse(Sex.UNKNOWN),
                detail.flatMap(ToldDetail::born)
                        .map(ToldDetail.Born::written)
                        .flatMap(SingleAnimals::born)
                        .orElse(null),
                ancestry.map(AncestryTold::founder).orElse(false),
                holding.map(HoldingTold::alive).orElse(true),
                ancestry.flatMap(AncestryTold::dam)
                        .flatMap(dam -> number(numbers.get(dam)))
                        .orElse(null),
                ancestry.map(AncestryTold::sires).stream()
                        .flatMap(sires -> sires.stream())
                        .flatMap(share -> number(numbers.get(share.sire())).stream()
                                .map(number -> new ToldSire(number, share.share())))
                        .toList());
    }

    private static Optional<StudbookNumber> number(@Nullable String text) {
        try {
            return Optional.ofNullable(text).map(StudbookNumber::parse).filter(number -> number.toString()
                    .equals(text));
        } catch (IllegalArgumentException notOne) {
            return Optional.empty();
        }
    }

    /** A span of two years is no date as the register has it: it is not told. */
    private static Optional<RoughDate> born(String text) {
        try {
            return Optional.of(RoughDate.parse(text));
        } catch (IllegalArgumentException | DateTimeException notOne) {
            return Optional.empty();
        }
    }
}
