package org.demebook.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.registry.Kin;
import org.demebook.registry.KnownAnimals.KnownAnimal;
import org.demebook.registry.KnownAnimals.OwnReference;
import org.jspecify.annotations.Nullable;

/** An animal of a sheet with what was found out about it: whether the register knows it, and who its parents are. */
final class SheetAnimal {
    final StatedRow stated;

    /** The animal that this row is about, when it is registered already. */
    final @Nullable KnownAnimal known;

    /** Its own when it is registered, else the one that it is going to have. */
    final UUID id;

    @Nullable
    Relative dam;

    /** One, or the candidates in the order in which they were written. */
    final List<Relative> sires = new ArrayList<>();

    /** A parent was named that does not exist: what follows from the parents cannot be said. */
    boolean parentMissing;

    SheetAnimal(StatedRow stated, @Nullable KnownAnimal known) {
        this.stated = stated;
        this.known = known;
        this.id = known == null ? Journal.newId() : known.view().id();
    }

    /**
     * An animal as a parent.
     *
     * @param number null when it has none yet
     * @param row null when it is registered already
     */
    record Relative(
            UUID id,
            Kin kin,
            @Nullable String number,
            @Nullable SheetAnimal row) {
        static Relative of(KnownAnimal known) {
            return new Relative(known.view().id(), known.kin(), known.view().number(), null);
        }
    }

    boolean isNew() {
        return known == null;
    }

    int row() {
        return stated.row();
    }

    Relative asParent() {
        return known == null
                ? new Relative(id, kin(), Objects.toString(stated.number(), null), this)
                : Relative.of(known);
    }

    /** As the rules of the register look at it. */
    Kin kin() {
        return known == null
                ? new Kin(
                        stated.label(),
                        stated.sexOrUnknown(),
                        stated.born(),
                        stated.died(),
                        null,
                        false,
                        stated.locality())
                : known.kin();
    }

    /** The reference in its collection; null when one of the two is missing. */
    @Nullable
    OwnReference ownReference() {
        return stated.reference() == null || stated.collection() == null
                ? null
                : new OwnReference(stated.collection(), stated.reference());
    }

    /** Parents that stand in the sheet and are new as well, dam first. */
    List<SheetAnimal> newParents() {
        var parents = new ArrayList<SheetAnimal>();
        if (dam != null && dam.row() != null) {
            parents.add(dam.row());
        }
        for (var sire : sires) {
            if (sire.row() != null) {
                parents.add(sire.row());
            }
        }
        return parents;
    }
}
