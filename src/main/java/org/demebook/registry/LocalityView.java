package org.demebook.registry;

import java.util.List;
import org.demebook.registry.LocalityClaim.Certainty;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * What an animal's pedigree says of its locality; computed on every question.
 *
 * @param animal studbook number
 * @param claim what is claimed of the animal itself; absent when nothing is
 * @param localities that its founders, and whoever else in its pedigree has a claim, are of; the population's first
 * @param mixed two of these are documented or stated: it is of none of them
 * @param certainty the weakest in its pedigree: it is known no better
 * @param lines where its pedigree ends: founders, and parents that are not known; itself when it is a founder
 * @param notEstablished how many of the lines end in a parent that is not known, in a doubtful or unknown claim, or in
 *     another locality than the population's
 * @param sentence the same in words
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record LocalityView(
        String animal,
        @Nullable LocalityClaim claim,
        List<String> localities,
        boolean mixed,
        Certainty certainty,
        int lines,
        int notEstablished,
        String sentence) {}
