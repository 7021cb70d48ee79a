package org.demebook.registry;

import static org.demebook.consent.FieldGroup.COARSE_PLACE;
import static org.demebook.consent.FieldGroup.CUSTODY;
import static org.demebook.consent.FieldGroup.HEALTH;
import static org.demebook.consent.FieldGroup.IDENTITY;
import static org.demebook.consent.FieldGroup.MARKS_AND_PHOTOS;
import static org.demebook.consent.FieldGroup.NOTES;
import static org.demebook.consent.FieldGroup.PARENTAGE;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.consent.Shows;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.notation.SourceCode;
import org.demebook.photo.PhotoView;
import org.jspecify.annotations.Nullable;

/**
 * An animal as one asker sees it: all of it who holds or owns it, everybody else what both have granted.
 *
 * @param id never changes and is never used again
 * @param born absent when unknown
 * @param locality what is claimed of it; absent when nothing is. What its pedigree makes of it is computed elsewhere
 * @param dam studbook number; absent when unknown
 * @param twins littermates from the same sac
 * @param sameAs the number that stands for it since two records were found to be one animal
 * @param revision for who holds or owns it; absent for everybody else
 * @param held what is granted seldom; absent where none of it is
 */
public record AnimalView(
        @Shows(IDENTITY) UUID id,
        @Shows(IDENTITY) String number,
        @Shows(IDENTITY) Sex sex,
        @Shows(IDENTITY) @Nullable RoughDate born,
        @Shows(IDENTITY) boolean alive,
        @Shows(IDENTITY) Origin origin,
        @Shows(IDENTITY) @Nullable LocalityClaim locality,
        @Shows(PARENTAGE) @Nullable String dam,
        @Shows(PARENTAGE) StatedSire sire,
        @Shows(PARENTAGE) @Nullable UUID litter,

        @Shows(PARENTAGE) @JsonInclude(JsonInclude.Include.NON_EMPTY)
        List<Twin> twins,

        @Shows(IDENTITY) @Nullable String sameAs,
        @Shows(CUSTODY) @Nullable Long revision,
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
     * @param region in which it lives, as its collection states; absent where it states none
     * @param owner the collection whose animal it is, when that is another (a breeding loan)
     */
    public record Held(
            @Shows(CUSTODY) @Nullable UUID collection,
            @Shows(CUSTODY) @Nullable UUID owner,
            @Shows(COARSE_PLACE) @Nullable String region,
            @Shows(IDENTITY) @Nullable RoughDate died,
            @Shows(HEALTH) @Nullable String deathCause,
            @Shows(CUSTODY) @Nullable SourceCode sourceCode,
            @Shows(HEALTH) @Nullable Boolean malformed,
            @Shows(IDENTITY) List<DeterminedSexView> sexDeterminations,
            @Shows(MARKS_AND_PHOTOS) List<IdentifierView> identifiers,
            @Shows(MARKS_AND_PHOTOS) List<PhotoView> photos,
            @Shows(NOTES) @Nullable String notes) {}
}
