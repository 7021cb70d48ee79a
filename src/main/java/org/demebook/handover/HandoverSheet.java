package org.demebook.handover;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.ancestry.AncestryView.Contribution;
import org.demebook.ancestry.FigureRange;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.notation.SourceCode;
import org.demebook.registry.IdentifierView;
import org.demebook.registry.StatedSire;
import org.demebook.transfer.Kind;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * What a sheet says: the register on the day of its issue, for the one who takes the animal over.
 *
 * @param givenBy {@value #A_KEEPER}, or the full name of a keeper who asked for it to be printed
 * @param marks transponders and marks; who holds the sheet needs them whole
 * @param notes each in words: quarantine, what to report back, cautions
 */
public record HandoverSheet(
        UUID id,
        LocalDate issuedOn,
        String givenBy,
        @Schema(implementation = String.class) Kind kind,
        Identity identity,
        List<IdentifierView> marks,
        Figures figures,
        Rearing rearing,
        Source source,
        List<Note> notes) {

    static final String A_KEEPER = "a keeper of this register";

    /**
     * What every member sees of the animal, and what a check compares with the register.
     *
     * @param taxon as the population is described
     * @param locality likewise: as claimed, not proven
     * @param born absent when unknown
     * @param dam studbook number; absent when unknown
     */
    public record Identity(
            String number,
            String taxon,
            String locality,
            @Nullable RoughDate born,
            Sex sex,
            @Nullable String dam,
            StatedSire sire) {}

    /**
     * @param inbreedingCoefficient F, in [0, 1]
     * @param inbreedingBySire absent where it depends on no sire that is one of several
     * @param knownAncestry the share of its genome, in [0, 1], that traces to stated founders
     * @param founders by number, the largest contribution first
     * @param journalHead the last journal entry that was taken into account
     */
    public record Figures(
            double inbreedingCoefficient,
            @Nullable FigureRange inbreedingBySire,
            double knownAncestry,
            List<Contribution> founders,
            double unnamedContribution,
            long journalHead) {}

    /**
     * How it was reared, as far as the giver's records say.
     *
     * @param established as the readiness check has it on that day
     * @param notEstablished why not, each reason in words; empty when it is
     * @param openConditions what else the readiness check asks for and does not find; empty when it may leave
     * @param firstMeasures the first that were taken: at or after its birth
     * @param lastMeasures absent when there are none but the first
     * @param mealsInARow the last meals that it took without help, one after the other
     * @param meals the last ten that were offered, the latest first
     */
    public record Rearing(
            boolean established,
            List<String> notEstablished,
            List<String> openConditions,
            @Nullable Measures firstMeasures,
            @Nullable Measures lastMeasures,
            int mealsInARow,
            List<Meal> meals,
            List<Shed> sheds,
            List<Test> tests) {}

    /** @param lengthKind {@code snout-vent} or {@code total}; absent with no length */
    public record Measures(
            LocalDate on,
            @Nullable BigDecimal massGrams,
            @Nullable Integer lengthMillimetres,
            @Nullable String lengthKind) {}

    /** @param outcome taken (without help), assisted or refused */
    public record Meal(
            LocalDate on, String outcome, @Nullable String prey) {}

    public record Shed(LocalDate on, @Nullable Boolean complete) {}

    public record Test(
            LocalDate sampledOn,
            String agent,
            @Nullable String method,
            @Nullable String sample,
            String result) {}

    /**
     * @param recorded the code that its keeper has on record, unchecked; absent when none
     * @param hint what to ask the authority; never that it is legal
     */
    public record Source(
            @Schema(implementation = String.class) @Nullable SourceCode recorded, String hint) {}

    public record Note(String about, String text) {}
}
