package org.demebook.transfer;

import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** Scenario B6. That pregnant animals should not be transported is the advice to carriers under CITES. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class GravidTransferTest {
    @Test
    void the_transfer_of_a_gravid_female_cites_the_transport_advice_and_asks_to_confirm() {
        var colony = Colony.found();
        var female = colony.female(WREN);
        ToldGravid.GRAVID.add(
                UUID.fromString(colony.get(WREN, "/animals/" + female).extract().path("id")));
        var sale = new HashMap<String, Object>(Map.of("animal", female, "kind", "sale", "to", INES));

        colony.post(WREN, "/transfers", sale)
                .statusCode(422)
                .body("type", equalTo("/problems/gravid-female"))
                .body("findings[0].level", equalTo("block"))
                .body("detail", allOf(containsString(female), containsString("not to transport pregnant animals")));
        sale.put(
                "leave",
                List.of(Map.of("rule", "gravid-transfer", "reason", "the keeper moves house, twenty minutes")));
        colony.post(WREN, "/transfers", sale).statusCode(201);
        colony.get(WREN, "/animals/" + female + "/findings")
                .body("left[0].rule", equalTo("gravid-transfer"))
                .body("left[0].reason", equalTo("the keeper moves house, twenty minutes"));
        // a male, or one of whom nothing is known, goes without a question
        colony.post(WREN, "/transfers", Map.of("animal", colony.male(WREN), "kind", "sale", "to", INES))
                .statusCode(201);
    }
}
