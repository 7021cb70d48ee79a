package org.demebook.handover;

import java.util.List;
import org.demebook.notation.Origin;
import org.demebook.registry.AnimalView;
import org.jspecify.annotations.Nullable;

/**
 * What to ask an authority about the source code of an animal. A hint: the register knows what keepers stated, not what an
 * authority will count.
 *
 * <p>Source: CITES Res. Conf. 12.3 for the codes, and Notification 1998/14: a litter of a female that was taken from the wild
 * when already gravid is W or R, not F.
 */
final class SourceHint {
    static final String WILD = "Taken from the wild (W?). Ask your authority what that means for you.";
    static final String MAY_NOT_COUNT =
            "May not count as captive bred: its dam was taken from the wild, and the register does not show that she met"
                    + " its sire in captivity (W, R or F?). Ask your authority.";
    static final String BORN_OR_BRED =
            "Born in captivity to a parent that was taken from the wild; whether that counts as bred (C?) or as born in"
                    + " captivity (F?) is for your authority to say.";
    static final String BRED = "Both parents are recorded as captive bred (C?). Ask your authority.";
    static final String NOT_KNOWN = "The register does not know enough to say. Ask your authority.";

    private SourceHint() {}

    /**
     * @param dam null when unknown
     * @param sires the male that sired it, or those that may have; empty when none is known
     */
    static String of(AnimalView animal, @Nullable AnimalView dam, List<AnimalView> sires) {
        if (animal.origin() == Origin.WILD_CAUGHT) {
            return WILD;
        }
        if (dam != null && dam.origin() == Origin.WILD_CAUGHT) {
            return conceivedInCaptivity(animal, sires) ? BORN_OR_BRED : MAY_NOT_COUNT;
        }
        if (sires.stream().anyMatch(sire -> sire.origin() == Origin.WILD_CAUGHT)) {
            return BORN_OR_BRED;
        }
        boolean sired = animal.sire().kind().equals("known")
                && sires.stream().allMatch(sire -> sire.origin() == Origin.CAPTIVE_BRED);
        return sired && dam != null && dam.origin() == Origin.CAPTIVE_BRED ? BRED : NOT_KNOWN;
    }

    /** A male that was bred in captivity was never with her in the wild; any other may have been, and so may a stranger. */
    private static boolean conceivedInCaptivity(AnimalView animal, List<AnimalView> sires) {
        return animal.sire().kind().equals("known")
                && sires.stream().allMatch(sire -> sire.origin() == Origin.CAPTIVE_BRED);
    }
}
