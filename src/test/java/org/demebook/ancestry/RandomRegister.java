package org.demebook.ancestry;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import org.demebook.consent.Action;
import org.demebook.consent.FieldGroup;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.notation.StudbookNumber;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sire;
import org.jspecify.annotations.Nullable;

/** A register as chance has it, with every kind of birth, and random grants; the same for the same seed. */
final class RandomRegister {
    private static final List<String> SHARES = List.of("0.5", "0.3", "0.2");

    final Random random;
    final List<PedigreeRow> records = new ArrayList<>();
    /** By row, field group and action: whether it is granted. */
    private final boolean[][][] granted;

    RandomRegister(long seed, int size) {
        random = new Random(seed);
        for (int i = 0; i < size; i++) {
            records.add(stated(i, new UUID(random.nextLong(), random.nextLong())));
        }
        granted = new boolean[size][FieldGroup.values().length][Action.values().length];
        int generosity = 1 + random.nextInt(5);
        for (var ofAnimal : granted) {
            for (var ofGroup : ofAnimal) {
                ofGroup[Action.READ.ordinal()] = random.nextInt(6) < generosity;
                ofGroup[Action.COMPUTE.ordinal()] = random.nextInt(6) < generosity;
            }
        }
    }

    boolean may(int row, FieldGroup fieldGroup, Action action) {
        return granted[row][fieldGroup.ordinal()][action.ordinal()];
    }

    boolean counts(int row, FieldGroup fieldGroup) {
        return may(row, fieldGroup, Action.READ) || may(row, fieldGroup, Action.COMPUTE);
    }

    boolean parentageCounts(int row) {
        return counts(row, FieldGroup.IDENTITY) && counts(row, FieldGroup.PARENTAGE);
    }

    Sight sight() {
        return Sight.of(records.size(), this::may);
    }

    /** The same register, in which whatever is granted neither to be seen nor to be computed with was stated otherwise. */
    List<PedigreeRow> withOtherSecrets() {
        var changed = new ArrayList<PedigreeRow>();
        for (int row = 0; row < records.size(); row++) {
            var was = records.get(row);
            var other = stated(row, was.id());
            var identity = counts(row, FieldGroup.IDENTITY) ? was : other;
            var parentage = parentageCounts(row) ? was : other;
            changed.add(new PedigreeRow(
                    was.id(),
                    was.number(),
                    identity.sex(),
                    identity.born(),
                    identity.bornEarliest(),
                    identity.bornLatest(),
                    identity.alive(),
                    identity.diedEarliest(),
                    identity.origin(),
                    parentage.damId(),
                    parentage.sire(),
                    was.collectionId(),
                    was.ownerCollectionId(),
                    null,
                    twin(changed, row, parentage),
                    random.nextInt(100)));
        }
        return changed;
    }

    /** A twin says who the parents of both are: it stays where both parentages are granted, or else is anything. */
    private @Nullable UUID twin(List<PedigreeRow> before, int row, PedigreeRow parentage) {
        var was = records.get(row).twinOfId();
        if (was != null && parentageCounts(row) && parentageCounts(row(was))) {
            return was;
        }
        var other = parentage.twinOfId();
        boolean secret = other != null && !(parentageCounts(row) && parentageCounts(row(other)));
        return secret && before.get(row(other)).twinOfId() == null ? other : null;
    }

    int row(UUID id) {
        for (int row = 0; row < records.size(); row++) {
            if (records.get(row).id().equals(id)) {
                return row;
            }
        }
        throw new IllegalArgumentException();
    }

    int row(String number) {
        for (int row = 0; row < records.size(); row++) {
            if (records.get(row).number().equals(number)) {
                return row;
            }
        }
        throw new IllegalArgumentException(number);
    }

    private PedigreeRow stated(int row, UUID id) {
        boolean wild = row < 5 || random.nextInt(8) == 0;
        var dam = wild || random.nextInt(8) == 0 ? null : someBefore(row).id();
        var sire = wild ? new Sire.Unknown() : sire(row, dam);
        var twin = dam != null && random.nextInt(8) == 0 ? someBefore(row) : null;
        var born = random.nextBoolean() ? LocalDate.of(2000 + row, 1 + random.nextInt(12), 3) : null;
        return new PedigreeRow(
                id,
                new StudbookNumber("MC", "H", row + 1L).toString(),
                Sex.values()[random.nextInt(Sex.values().length)],
                born == null ? null : born.toString(),
                born,
                born,
                random.nextBoolean(),
                null,
                wild ? Origin.WILD_CAUGHT : Origin.CAPTIVE_BRED,
                dam,
                sire,
                null,
                null,
                null,
                twin == null || twin.damId() == null || twin.twinOfId() != null ? null : twin.id(),
                1);
    }

    private Sire sire(int row, @Nullable UUID dam) {
        return switch (random.nextInt(6)) {
            case 0 -> new Sire.Unknown();
            case 1 -> dam == null ? new Sire.Unknown() : new Sire.None("terminal", "0.25");
            case 2 -> {
                var candidates = new ArrayList<Sire.Candidate>();
                for (var share : SHARES.subList(0, 1 + random.nextInt(3))) {
                    var male = someBefore(row).id();
                    if (candidates.stream()
                            .noneMatch(candidate -> candidate.sireId().equals(male))) {
                        candidates.add(new Sire.Candidate(male, share));
                    }
                }
                yield new Sire.Candidates(candidates, random.nextBoolean() ? new UUID(7, random.nextInt(3)) : null);
            }
            default -> new Sire.Known(someBefore(row).id(), random.nextInt(5) == 0);
        };
    }

    private PedigreeRow someBefore(int row) {
        return records.get(random.nextInt(row));
    }
}
