package org.demebook.handover;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.demebook.ancestry.AncestryView;
import org.demebook.diary.CareRecords;
import org.demebook.handover.HandoverSheet.Figures;
import org.demebook.handover.HandoverSheet.Identity;
import org.demebook.handover.HandoverSheet.Source;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.rearing.Rearing;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.registry.IdentifierView;
import org.demebook.registry.Populations;
import org.demebook.registry.StatedSire.StatedCandidate;
import org.demebook.transfer.Kind;

/** Gathers what a sheet says from the rooms that know it, each asked as the giver. */
@ApplicationScoped
class SheetWriter {
    @Inject
    Animals animals;

    @Inject
    Populations populations;

    @Inject
    Keepers keepers;

    @Inject
    CareRecords careRecords;

    @Inject
    Rearing rearing;

    @Inject
    Clock clock;

    HandoverSheet write(Standing by, AnimalView animal, Kind kind, boolean showName, AncestryView ancestry) {
        var today = LocalDate.now(clock);
        var held = Objects.requireNonNull(animal.held());
        return new HandoverSheet(
                Journal.newId(),
                today,
                showName ? keepers.fullName(by.keeperId()).orElse(HandoverSheet.A_KEEPER) : HandoverSheet.A_KEEPER,
                kind,
                identity(by, animal),
                held.identifiers().stream()
                        .filter(identifier -> !isReference(identifier))
                        .toList(),
                figures(ancestry, by.head()),
                RearingRecords.of(careRecords.diary(by, animal.id()), rearing.readiness(by, animal.number(), today)),
                new Source(held.sourceCode(), sourceHint(by, animal)),
                Advice.notes(kind, populations.get(by).profile().daysOfQuarantine()));
    }

    /** What its keeper calls it is no business of the next one's. */
    private static boolean isReference(IdentifierView identifier) {
        return identifier.kind().equals("own-reference");
    }

    Identity identity(Standing by, AnimalView animal) {
        var population = populations.get(by);
        return new Identity(
                animal.number(),
                population.taxon(),
                population.locality(),
                animal.born(),
                animal.sex(),
                animal.dam(),
                animal.sire());
    }

    private static Figures figures(AncestryView ancestry, long head) {
        return new Figures(
                ancestry.inbreedingCoefficient(),
                ancestry.inbreedingBySire(),
                ancestry.knownAncestry(),
                ancestry.founders(),
                ancestry.unnamedContribution(),
                head);
    }

    private String sourceHint(Standing by, AnimalView animal) {
        return SourceHint.of(
                animal,
                animal.dam() == null ? null : animals.find(by, animal.dam()).orElse(null),
                sires(animal)
                        .flatMap(number -> animals.find(by, number).stream())
                        .toList());
    }

    private static Stream<String> sires(AnimalView animal) {
        var candidates = Objects.requireNonNullElse(animal.sire().candidates(), List.<StatedCandidate>of());
        return Stream.concat(
                Stream.ofNullable(animal.sire().animal()), candidates.stream().map(StatedCandidate::animal));
    }
}
