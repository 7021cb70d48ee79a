package org.demebook.web.animal;

import java.util.List;
import java.util.Locale;
import org.demebook.planning.BreedingHoldView;
import org.demebook.plot.Lifeline;
import org.demebook.registry.AnimalFindings.AnimalFindingsView;
import org.demebook.registry.AnimalView;
import org.demebook.registry.SexDetermination.Confidence;
import org.demebook.registry.SexDetermination.Method;
import org.demebook.transfer.TransferView;
import org.jspecify.annotations.Nullable;

/**
 * All that the page of an animal tells the one who looks.
 *
 * @param name what they call it; empty where they have no name for it
 * @param mine whether they hold or own it
 * @param inHand whether they hold it
 * @param readsLitter whether they may read of the litter that it was born in
 * @param age in words; empty where it is not known
 * @param collection where it lives, in words; empty where that is not shown
 * @param findings null where they are not for them
 * @param transfer that it is in now; null where it is in none, or none of theirs
 * @param address of its page
 * @param shared what others may see of it; only of theirs
 */
public record Portrait(
        AnimalView animal,
        String name,
        boolean mine,
        boolean inHand,
        boolean readsLitter,
        String age,
        String collection,
        Descent descent,
        List<Brood> young,
        @Nullable AnimalFindingsView findings,
        BreedingHoldView hold,
        List<SharedWith> shared,
        @Nullable TransferView transfer,
        @Nullable Care care,
        Lifeline life,
        String address,
        CorrectionMessages words) {

    /** How a sex was determined, by the word of the API. */
    public String method(String word) {
        return words.sexMethod(Method.valueOf(word.toUpperCase(Locale.ROOT)));
    }

    /** How sure a sex is, by the word of the API. */
    public String confidence(String word) {
        return words.sexConfidence(Confidence.valueOf(word.toUpperCase(Locale.ROOT)));
    }

    /** Of a young it goes without saying that it has none. */
    public boolean isYoungTold() {
        return !young.isEmpty() || care == null || care.leaving() == null;
    }

    /** Whether it is there to be bred, handed over and cared for. */
    public boolean isActive() {
        return animal.alive() && animal.sameAs() == null;
    }
}
