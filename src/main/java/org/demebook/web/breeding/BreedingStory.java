package org.demebook.web.breeding;

import java.util.List;
import org.demebook.breeding.BreedingSignView;
import org.demebook.breeding.IntroductionView;
import org.demebook.breeding.Sires.CandidateSiresView;
import org.demebook.incubation.IncubationView;
import org.demebook.notation.Sex;
import org.jspecify.annotations.Nullable;

/**
 * All that is told of an animal's breeding.
 *
 * @param awaited how her cycle stands; null for a male, or where somebody else keeps her
 * @param candidates whom a litter born today would come from; null for the same
 * @param laysEggs whether the population's females lay
 */
public record BreedingStory(
        String number,
        Sex sex,
        boolean held,
        @Nullable Awaited awaited,
        @Nullable CandidateSiresView candidates,
        List<BreedingSignView> signs,
        List<IntroductionView> introductions,
        List<IncubationView> incubations,
        boolean laysEggs) {

    public boolean isFemale() {
        return sex == Sex.FEMALE;
    }

    public boolean isMale() {
        return sex == Sex.MALE;
    }
}
