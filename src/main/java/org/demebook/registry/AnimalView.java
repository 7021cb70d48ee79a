package org.demebook.registry;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.notation.SourceCode;
import org.demebook.photo.PhotoView;
import org.jspecify.annotations.Nullable;

/**
 * An animal as a member of its population may see it: identity and parentage, and the rest where it is in their hands.
 *
 * @param id never changes and is never used again
 * @param born absent when unknown
 * @param locality what is claimed of it; absent when nothing is. What its pedigree makes of it is computed elsewhere
 * @param dam studbook number; absent when unknown
 * @param twins littermates from the same sac
 * @param sameAs the number that stands for it since two records were found to be one animal
 * @param held what only its holder and its owner see; absent for everybody else
 */
public record AnimalView(
        UUID id,
        String number,
        Sex sex,
        @Nullable RoughDate born,
        boolean alive,
        Origin origin,
        @Nullable LocalityClaim locality,
        @Nullable String dam,
        StatedSire sire,
        @Nullable UUID litter,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Twin> twins,
        @Nullable String sameAs,
        long revision,
        @Nullable Held held) {

    /**
     * A littermate from the same sac.
     *
     * @param animal its studbook number
     */
    public record Twin(String animal, TwinKind kind) {}

    /**
     * One determination of the sex.
     *
     * @param method how: probing, popping, spurs, ultrasound, dna, breeding or looks; absent when nobody said
     * @param confidence presumed, examined or confirmed; absent when nobody said
     * @param determinedOn absent when nobody said
     */
    public record DeterminedSexView(
            Sex sex,
            @Nullable String method,
            @Nullable String confidence,
            @Nullable LocalDate determinedOn) {}

    /**
     * @param sexDeterminations the last one first; a later one never overwrites an earlier
     * @param collection where it lives; absent while it is with somebody who does not take part
     * @param owner the collection whose animal it is, when that is another (a breeding loan)
     */
    public record Held(
            @Nullable UUID collection,
            @Nullable UUID owner,
            @Nullable RoughDate died,
            @Nullable String deathCause,
            @Nullable SourceCode sourceCode,
            boolean malformed,
            List<DeterminedSexView> sexDeterminations,
            List<IdentifierView> identifiers,
            List<PhotoView> photos,
            @Nullable String notes) {}
}
