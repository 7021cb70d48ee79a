package org.demebook.handover;

import static org.demebook.Colony.WREN;

import java.util.Map;
import org.demebook.Colony;

/** One of everything that happens in this room. */
public final class SheetStory {
    private SheetStory() {}

    public static void tell(Colony colony) {
        var young = new Young(colony, "wild-caught").reared("assisted", "taken");
        young.issued(WREN);
        colony.post(WREN, young.issued(WREN) + "/withdrawal", Map.of("reason", "a slip of the pen"))
                .statusCode(200);
    }
}
