package org.demebook.transfer;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;

import org.demebook.Colony;

/** One of everything that happens to an animal in dispute; dov is a coordinator. */
public final class DisputeStory {
    private DisputeStory() {}

    public static void tell(Colony colony) {
        var disputed = new Disputed(colony);
        var animal = disputed.soldToInes();
        // one animal again and again: each end makes room for the next
        disputed.end(WREN, disputed.reported(animal), "withdrawal").statusCode(200);
        disputed.settle(DOV, disputed.reported(animal), "dismissed").statusCode(200);
        disputed.handover.handOut(INES, animal).statusCode(201);
        disputed.end(INES, disputed.reported(animal), "concession").statusCode(200);
        disputed.reported(INES, animal);
        disputed.reported(disputed.soldToInes());
    }
}
