package org.demebook.registry;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.annotation.JsonTypeName;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.kinship.Fusion;
import org.jspecify.annotations.Nullable;

/** What is known of the sire: one, none known, several that it may be, or truly none. Each is a different fact. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
@JsonSubTypes({
    @JsonSubTypes.Type(Sire.Known.class),
    @JsonSubTypes.Type(Sire.Unknown.class),
    @JsonSubTypes.Type(Sire.Candidates.class),
    @JsonSubTypes.Type(Sire.None.class)
})
public sealed interface Sire {
    /** The males that it is or may be. */
    default Set<UUID> animalIds() {
        if (this instanceof Known known) {
            return Set.of(known.sireId());
        }
        return this instanceof Candidates candidates
                ? candidates.candidates().stream().map(Candidate::sireId).collect(Collectors.toSet())
                : Set.of();
    }

    /** @param doubtful the link is of low confidence, until a later statement says otherwise */
    @JsonTypeName("known")
    record Known(
            UUID sireId,
            @JsonInclude(JsonInclude.Include.NON_DEFAULT) boolean doubtful) implements Sire {}

    @JsonTypeName("unknown")
    record Unknown() implements Sire {}

    /**
     * One of several.
     *
     * @param drawId young with the same draw have one and the same of them as sire; null: each young may have another
     */
    @JsonTypeName("candidates")
    record Candidates(List<Candidate> candidates, @Nullable UUID drawId) implements Sire {}

    /**
     * The dam alone (parthenogenesis).
     *
     * @param fusion terminal or central
     * @param secondDivision share y of second-division segregation, 0 to 1, as decimal text
     */
    @JsonTypeName("none")
    record None(String fusion, String secondDivision) implements Sire {
        public Fusion kindOfFusion() {
            return Fusion.valueOf(fusion.toUpperCase(Locale.ROOT));
        }
    }

    /** @param probability above 0, at most 1, as decimal text; all of one young sum to at most 1 */
    record Candidate(UUID sireId, String probability) {
        public BigDecimal value() {
            return new BigDecimal(probability);
        }
    }
}
