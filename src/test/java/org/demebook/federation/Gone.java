package org.demebook.federation;

import static org.demebook.Colony.as;

import java.util.List;
import java.util.Map;
import org.demebook.Colony;

/** A node that is gone for good, whose animals the server under test adopts on another node's word. */
public final class Gone {
    private Gone() {}

    /**
     * The witness has heard all that the one that is gone said; the server knows what it was given.
     *
     * @return what the adopted animals are called between nodes
     */
    public static List<String> adopt(Colony colony, Upland gone, Upland witness) {
        witness.fetch();
        witness.hear(gone);
        var word = witness.participant.endorse(gone.id());
        return as("administrator")
                .body(Map.of(
                        "gone",
                        gone.id(),
                        "endorsements",
                        List.of(Map.of(
                                "word",
                                word.word().compact(),
                                "keys",
                                word.keys().toJson()))))
                .post(colony.path("/federation/adoptions"))
                .then()
                .statusCode(200)
                .extract()
                .path("animals");
    }
}
