package org.demebook.telling;

import org.demebook.kinship.Convention;
import org.demebook.kinship.SkeletonFigures;
import org.demebook.protocol.Participant;

/** The figures of a population as another node works them out of its own copies. */
public final class FiguresElsewhere {
    private FiguresElsewhere() {}

    public static SkeletonFigures of(Participant part) {
        return FederatedFigures.skeleton(part.heads(), part.told(Telling::isToEverybody))
                .figures(Convention.UNRELATED);
    }
}
