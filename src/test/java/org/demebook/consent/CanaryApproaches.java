package org.demebook.consent;

import static org.demebook.Backstage.ask;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.consent.CanaryWorld.KEEPERS;
import static org.demebook.consent.CanaryWorld.created;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;

/**
 * Two keepers who do not know of each other, and one asks the other through a pseudonym. Everybody lets animals be computed with,
 * which shows nobody anything. One approach stays open, another is agreed to.
 */
final class CanaryApproaches {
    /** A fourth household, without which there are too few; of it nobody is shown anything. */
    private static final String FOURTH = "quill";

    private final CanaryWorld world;
    private final Colony colony;

    CanaryApproaches(CanaryWorld world) {
        this.world = world;
        colony = world.colony;
    }

    /** @param male of the keeper who asks, fit to breed */
    void write(String male) {
        Colony.token(FOURTH);
        created(colony.post(WREN, "/members", Map.of("name", FOURTH, "role", "member")), "");
        world.words.told(created(colony.post(FOURTH, "/collections", Map.of("label", "by the door")), "id"), FOURTH);
        KEEPERS.forEach(keeper -> colony.share(keeper, "compute-only"));
        colony.share(FOURTH, "compute-only");
        world.words.told(colony.female(FOURTH), FOURTH);

        List<String> partners = colony.get(INES, "/animals/" + male + "/unnamed-partners")
                .extract()
                .path("partners");
        partners.forEach(partner -> world.words.told(partner, INES));
        var approaches = List.of(propose(male, partners.get(0)), propose(male, partners.get(1)));
        approaches.stream()
                .filter(approach -> KEEPERS.contains(asked(approach)))
                .findFirst()
                .ifPresent(approach -> agree(male, approach));
    }

    private String propose(String male, String partner) {
        var words = world.words.text("own");
        var body = new HashMap<String, Object>(Map.of("animal", male, "partner", partner, "words", words));
        var id = created(colony.post(INES, "/approaches", body), "id");
        var asked = asked(id);
        // what is written to it is for its two sides
        world.words.told(words, INES, asked);
        world.thing("approach", id, INES, asked);
        return id;
    }

    /** For a year each of the two may know number and whereabouts of the other's animal. */
    private void agree(String male, String id) {
        var asked = asked(id);
        created(colony.post(asked, "/approaches/" + id + "/agreement", "{}"), "");
        world.know(asked, male, INES);
        var partner = ask(
                "select n.number from demebook.animal n join demebook.approach a"
                        + " on a.population_id = n.population_id and a.partner_id = n.id where a.id = ?",
                UUID.fromString(id));
        world.know(INES, partner.get(0), asked);
    }

    /** Who acts for the collection that was asked. */
    private static String asked(String approach) {
        return ask(
                        "select k.name from demebook.approach a"
                                + " join demebook.collection_keeper c on c.population_id = a.population_id"
                                + " and c.collection_id = a.partner_collection_id"
                                + " join demebook.keeper k on k.id = c.keeper_id where a.id = ?",
                        UUID.fromString(approach))
                .get(0);
    }
}
