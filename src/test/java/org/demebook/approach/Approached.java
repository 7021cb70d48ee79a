package org.demebook.approach;

import static org.demebook.Backstage.ask;
import static org.demebook.Backstage.change;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Marrowfin.OYELARAN;

import io.restassured.response.ValidatableResponse;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.Marrowfin;
import org.demebook.consent.Granting;

/**
 * The worked pedigree, whose keepers let its animals be computed with and not be seen. To wren's female 013 the males 006, 014, 022
 * and 024 are proposed: 006 is oyelaran's, 014 ines's, 022 and 024 are dov's.
 */
final class Approached {
    final Marrowfin own = Marrowfin.settledPrivate();
    final Colony colony = own.colony;
    final Granting grants = new Granting(colony.code);

    /** Of dov, who withdraws them in some tests. */
    final List<UUID> grantsOfDov;

    Approached() {
        grants.computeOnly(WREN);
        grants.computeOnly(INES);
        grants.computeOnly(OYELARAN);
        grantsOfDov = grants.computeOnly(DOV);
    }

    ValidatableResponse propose(String keeper, int animal, String pseudonym) {
        return colony.post(
                keeper,
                "/approaches",
                Map.of("animal", own.number(animal), "partner", pseudonym, "words", "She has bred twice."));
    }

    /** Wren asks the keeper of a partner of 013; returns the id. */
    String proposeTo(int partner) {
        return propose(WREN, 13, pseudonym(13, own.number(partner)))
                .statusCode(201)
                .extract()
                .path("id");
    }

    /** An agreement of wren and dov on 013 and 024. */
    String agreement() {
        var id = proposeTo(24);
        answer(DOV, id, "agreement").statusCode(200);
        return id;
    }

    ValidatableResponse answer(String keeper, String approach, String answer) {
        return colony.post(keeper, "/approaches/" + approach + "/" + answer, "{}");
    }

    ValidatableResponse look(String keeper, String approach) {
        return colony.get(keeper, "/approaches/" + approach);
    }

    List<String> pseudonyms(int animal) {
        return colony.get(WREN, "/animals/" + own.number(animal) + "/unnamed-partners")
                .statusCode(200)
                .extract()
                .path("partners");
    }

    /** What nobody but the server knows. */
    String pseudonym(int animal, String partnerNumber) {
        pseudonyms(animal);
        return ask(
                        "select u.pseudonyms[array_position(u.partner_ids, p.id)] from demebook.unnamed_partners u"
                                + " join demebook.animal a on a.population_id = u.population_id and a.id = u.animal_id"
                                + " join demebook.animal p on p.population_id = u.population_id and p.id = any (u.partner_ids)"
                                + " where a.number = ? and p.number = ?",
                        own.number(animal),
                        partnerNumber)
                .get(0);
    }

    /** As if it had been made, or answered, so many days earlier. */
    static void earlier(String approach, int days) {
        change(
                "update demebook.approach set proposed_on = proposed_on - ?, answered_on = answered_on - ? where id = ?",
                days,
                days,
                UUID.fromString(approach));
    }

    /** The states of the grants that an agreement gave, by keeper. */
    List<String> handGivenGrants(String keeper) {
        return colony.get(keeper, "/grants")
                .statusCode(200)
                .extract()
                .path("items.findAll { it.fieldGroups.contains('custody') }.state");
    }
}
