package org.demebook.federation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.nullValue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.BooleanSupplier;
import org.demebook.consent.Action;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Granting;
import org.demebook.consent.Purpose;
import org.demebook.consent.Recipient;
import org.demebook.notation.StudbookNumber;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Entry;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Saying;
import org.demebook.protocol.Statement;
import org.demebook.protocol.Statement.AncestryTold;
import org.demebook.protocol.Statement.HoldingTold;
import org.demebook.protocol.Statement.SireShare;
import org.demebook.protocol.Told;
import org.demebook.start.TestServer;
import org.demebook.telling.FiguresElsewhere;
import org.junit.jupiter.api.Test;

/** What this server tells another node of its animals is what their keepers granted that node, and nothing once they took it back. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class TellingTest extends SharedWorld {
    private static final Duration PATIENCE = Duration.ofSeconds(30);

    private String dam;
    private String sire;
    private String young;

    private void family() {
        dam = founder("female");
        sire = founder("male");
        young = colony.young(WREN, "female", "2020-06-29", dam, sire);
    }

    private String founder(String sex) {
        var founder = animal(sex, null);
        founder.put("origin", "wild-caught");
        return colony.register(WREN, founder);
    }

    private static void await(BooleanSupplier what) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (!what.getAsBoolean()) {
            assertThat(System.nanoTime()).as("it did not come about in time").isLessThan(end);
            try {
                Thread.sleep(100);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    private Told toldThere() {
        upland.pull(population, harbour);
        return upland.with(population, Participant::told);
    }

    private Granting grants() {
        return new Granting(colony.code);
    }

    private void allPrivate() {
        colony.share(WREN, "private");
    }

    private List<UUID> toNode(Action... actions) {
        return grants().give(
                        WREN,
                        Recipient.node("U"),
                        null,
                        List.of(FieldGroup.IDENTITY, FieldGroup.PARENTAGE),
                        List.of(Purpose.PEDIGREE_VIEW, Purpose.PAIRING_COMPUTATION),
                        List.of(actions));
    }

    // ── what is told ─────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void an_open_pedigree_is_told_by_number_and_withdrawn_within_a_look() {
        family();
        join();
        await(() -> toldThere().ancestry().size() == 3 && toldThere().holdings().size() == 3);
        var told = toldThere();
        var ofYoung = told.ancestry().values().stream()
                .filter(ancestry -> ancestry.dam().isPresent())
                .findFirst()
                .orElseThrow();
        assertThat(ofYoung.detail().path("number").textValue()).isEqualTo(young);
        assertThat(ofYoung.detail().path("dam").textValue()).isEqualTo(dam);
        assertThat(ofYoung.born()).contains("2020");
        assertThat(ofYoung.sires()).hasSize(1);
        var ofSire = told.ancestry().get(ofYoung.sires().get(0).sire());
        assertThat(ofSire.detail().path("number").textValue()).isEqualTo(sire);
        assertThat(ofSire.founder()).isTrue();
        assertThat(told.holdings().get(ofSire.animal()).sex()).isEqualTo("male");
        allPrivate();
        await(() -> toldThere().ancestry().isEmpty() && toldThere().holdings().isEmpty());
        assertThat(held()).isEmpty();
        // and the node says that it has nothing of it any more
        await(() -> {
            toldThere();
            return federations.reading(population, Participant::missingReceipts).isEmpty();
        });
    }

    /** Everything restricted that stands in this node's federated journal, as text. */
    private List<String> held() {
        return federations.reading(population, part -> {
            var told = part.told();
            return told.ancestry().values().stream().map(Object::toString).toList();
        });
    }

    @Test
    void of_what_may_be_computed_with_a_skeleton_is_told_and_no_number_leaves_the_node() {
        family();
        allPrivate();
        toNode(Action.COMPUTE);
        join();
        await(() -> toldThere().ancestry().size() == 3 && toldThere().holdings().size() == 3);
        var told = toldThere();
        assertThat(told.ancestry().values())
                .allMatch(ancestry -> ancestry.detail().isEmpty(), "nothing but ids, sexes and years");
        assertThat(told.ancestry().values().stream().filter(of -> of.dam().isPresent()))
                .hasSize(1);
        assertThat(told.toString()).doesNotContain(dam, sire, young, colony.code + "-H", WREN);
        // the keeper reads that it was told
        colony.get(WREN, "/disclosures").body("items.seenBy.node", hasItem("U"));
        // nor does which animals live together: that is custody
        assertThat(told.holdings().values().stream().map(HoldingTold::custodian))
                .doesNotHaveDuplicates();
        assertThat(federated()).doesNotContain(young);
    }

    /** The bytes of this node's federated journal, as they go out. */
    private String federated() {
        return String.join(
                "\n",
                ask(
                        "select convert_from(decode(translate(split_part(convert_from(entry, 'UTF8'), '.', 2), '-_', '+/')"
                                + " || repeat('=', (4 - length(split_part(convert_from(entry, 'UTF8'), '.', 2)) % 4) % 4), 'base64'), 'UTF8')"
                                + " from demebook.federated_entry where population_id = ? and entry is not null",
                        population));
    }

    @Test
    void who_is_granted_more_is_told_anew_and_the_earlier_telling_is_withdrawn() {
        family();
        allPrivate();
        var computed = toNode(Action.COMPUTE);
        join();
        await(() -> toldThere().ancestry().size() == 3);
        toNode(Action.READ);
        await(() -> toldThere().toString().contains(young));
        assertThat(toldThere().ancestry()).hasSize(3);
        grants().withdraw(WREN, computed);
        await(() -> toldThere().ancestry().values().stream()
                .noneMatch(of -> of.detail().toString().contains("compute")));
        assertThat(toldThere().ancestry()).hasSize(3);
    }

    @Test
    void what_members_may_read_is_not_told_to_another_node() {
        family();
        colony.share(WREN, "pairing-with-members");
        join();
        var other = colony.female(DOV); // dov shares an open pedigree with everybody
        await(() -> !toldThere().ancestry().isEmpty());
        assertThat(toldThere().ancestry()).hasSize(1);
        assertThat(toldThere().toString()).contains(other).doesNotContain(young);
    }

    // ── what is told here ────────────────────────────────────────────────────────────────────────────────────────────

    private AnimalId there(String sex, AncestryTold told) {
        var entries = upland.with(
                population,
                part -> part.write(List.of(
                        Saying.toAll(new Statement.AnimalEntered(told.animal())),
                        Saying.to(others(), told),
                        Saying.to(
                                others(),
                                new HoldingTold(
                                        told.animal(),
                                        sex,
                                        true,
                                        "somebody",
                                        JsonNodeFactory.instance.objectNode())))));
        entries.stream().skip(1).map(Entry::seq).forEach(toldBy::add);
        return told.animal();
    }

    /** Sequence numbers of what the other node told. */
    private final List<Long> toldBy = new ArrayList<>();

    private Set<String> others() {
        return Set.of(harbour.nodeId());
    }

    private AncestryTold youngThere(AnimalId id, AnimalId ofDam, Optional<AnimalId> ofSire, int serial, boolean read) {
        var detail = JsonNodeFactory.instance.objectNode();
        if (read) {
            var granted = detail.putArray("granted");
            for (var purpose : List.of("pedigree-view", "pairing-computation")) {
                granted.add(purpose + " identity read").add(purpose + " parentage read");
            }
            detail.put("number", new StudbookNumber(colony.code, "U", serial).toString());
        }
        return new AncestryTold(
                id,
                Optional.of("2019/2020"),
                Optional.of(ofDam),
                ofSire.map(one -> List.of(new SireShare(one, 1_000_000))).orElse(List.of()),
                false,
                detail);
    }

    // young of the same two: ¼; what is computed with stands between: ⅛. By hand
    @Test
    void an_animal_of_another_node_is_related_to_ours_until_its_telling_is_withdrawn() {
        family();
        join();
        await(() -> toldThere().ancestry().size() == 3);
        var ofYoung = toldThere().ancestry().values().stream()
                .filter(ancestry -> ancestry.dam().isPresent())
                .findFirst()
                .orElseThrow();
        var damId = ofYoung.dam().orElseThrow();
        var sireId = ofYoung.sires().get(0).sire();
        there("male", youngThere(new AnimalId(UUID.randomUUID(), upland.id()), damId, Optional.of(sireId), 7, true));
        var number = new StudbookNumber(colony.code, "U", 7).toString();
        var skeleton = there(
                "female",
                youngThere(new AnimalId(UUID.randomUUID(), upland.id()), damId, Optional.of(sireId), 0, false));
        there("male", youngThere(new AnimalId(UUID.randomUUID(), upland.id()), skeleton, Optional.empty(), 9, true));
        var nephew = new StudbookNumber(colony.code, "U", 9).toString();
        await(() -> colony.get(WREN, "/animals/" + young + "/kinship/" + nephew)
                        .extract()
                        .statusCode()
                == 200);
        colony.get(WREN, "/animals/" + young + "/kinship/" + number)
                .statusCode(200)
                .body("kinship", equalTo(.25f))
                .body("throughAncestorsNotShown", nullValue());
        colony.get(DOV, "/animals/" + young + "/kinship/" + nephew)
                .body("kinship", equalTo(.125f))
                .body("throughAncestorsNotShown", equalTo(true));
        assertThat(colony.get(WREN, "/animals/" + nephew + "/ancestry")
                        .extract()
                        .asString())
                .doesNotContain(colony.code + "-0-");
        colony.get(WREN, "/gene-pool").body("living", equalTo(6));

        upland.with(population, part -> part.write(List.of(Saying.toAll(new Statement.TellingsWithdrawn(toldBy)))));
        await(() -> colony.get(WREN, "/animals/" + young + "/kinship/" + number)
                        .extract()
                        .statusCode()
                == 404);
        colony.get(WREN, "/animals/" + nephew + "/ancestry").statusCode(404);
        colony.get(WREN, "/gene-pool").body("living", equalTo(3));
    }

    // scenario F1, between nodes: the sire here and a founder there may be one: ½ · ½ · ½. By hand
    @Test
    void a_claim_that_nobody_agreed_to_links_animals_possibly() {
        family();
        join();
        await(() -> toldThere().ancestry().size() == 3);
        var sireId = toldThere().ancestry().values().stream()
                .filter(of -> of.detail().path("number").asText().equals(sire))
                .findFirst()
                .orElseThrow()
                .animal();
        var founderThere = new AnimalId(UUID.randomUUID(), upland.id());
        there(
                "male",
                new AncestryTold(
                        founderThere,
                        Optional.empty(),
                        Optional.empty(),
                        List.of(),
                        true,
                        JsonNodeFactory.instance.objectNode()));
        there(
                "male",
                youngThere(new AnimalId(UUID.randomUUID(), upland.id()), founderThere, Optional.empty(), 4, true));
        var number = new StudbookNumber(colony.code, "U", 4).toString();
        var kinship = "/animals/" + young + "/kinship/" + number;
        await(() -> colony.get(WREN, kinship).extract().statusCode() == 200);
        colony.get(WREN, kinship).body("kinship", equalTo(0f)).body("ifClaimsHold", nullValue());
        upland.with(
                population,
                part -> part.write(List.of(
                        Saying.toAll(new Statement.SameAnimalClaimed(UUID.randomUUID(), founderThere, sireId)))));
        await(() -> colony.get(WREN, kinship).extract().path("ifClaimsHold") != null);
        colony.get(WREN, kinship).body("kinship", equalTo(0f)).body("ifClaimsHold", equalTo(.125f));
    }

    // ── figures over all nodes ───────────────────────────────────────────────────────────────────────────────────────

    // I9. Two founders, their young here, and one of the two and a skeleton there
    @Test
    void the_same_heads_give_bit_equal_figures_on_both_nodes() throws java.io.IOException {
        family();
        founder("male");
        join();
        await(() -> toldThere().holdings().size() == 4);
        var ofYoung = toldThere().ancestry().values().stream()
                .filter(ancestry -> ancestry.dam().isPresent())
                .findFirst()
                .orElseThrow();
        var there = new AnimalId(UUID.randomUUID(), upland.id());
        var mark = JsonNodeFactory.instance.objectNode().put("everybody", 1);
        upland.with(
                population,
                part -> part.write(List.of(
                        Saying.toAll(new Statement.AnimalEntered(there)),
                        Saying.toAll(new AncestryTold(
                                there,
                                Optional.of("2021"),
                                Optional.of(ofYoung.animal()),
                                List.of(new SireShare(ofYoung.sires().get(0).sire(), 1_000_000)),
                                false,
                                mark)),
                        Saying.toAll(new HoldingTold(there, "male", true, "somebody", mark)))));
        var json = new com.fasterxml.jackson.databind.ObjectMapper();
        await(() -> colony.get(DOV, "/federation/figures").extract().<Integer>path("living") == 5);
        // both have the same heads once nothing is said any more
        await(() -> {
            upland.pull(population, harbour);
            return upland.with(population, Participant::heads)
                    .equals(federations.reading(population, Participant::heads));
        });
        var here =
                json.readTree(colony.get(DOV, "/federation/figures").extract().asString());
        var pool = upland.with(population, FiguresElsewhere::of).pool().orElseThrow();
        assertThat(here.path("geneDiversity").doubleValue()).isEqualTo(pool.geneDiversity());
        assertThat(here.path("meanKinship").doubleValue()).isEqualTo(pool.meanKinship());
        assertThat(here.path("founderGenomeEquivalents").doubleValue()).isEqualTo(pool.founderGenomeEquivalents());
        // by hand: dam, sire, other 1/2 each; young 1/2, with either 1/4; the other 5/8, with young and sire 3/8, with
        // dam 1/8
        assertThat(pool.meanKinship())
                .isCloseTo(
                        (4 * .5 + 2 * 2 * .25 + 5 / 8. + 2 * (3 / 8. + 3 / 8. + 1 / 8.)) / 25,
                        org.assertj.core.api.Assertions.within(1e-15));
        assertThat(here.path("heads").path(harbour.nodeId()).longValue())
                .isEqualTo(federations.reading(population, Participant::heads).get(harbour.nodeId()));
    }

    // ── what a keeper chooses for one node ───────────────────────────────────────────────────────────────────────────

    @Test
    void a_ready_choice_for_one_node_stands_beside_that_for_everybody_and_private_ends_it() {
        family();
        allPrivate();
        var collection = colony.get(WREN, "/collections").extract().<String>path("[0].id");
        var sharing = "/collections/" + collection + "/sharing";
        org.demebook.Colony.as(WREN)
                .body(java.util.Map.of("choice", "compute-only", "node", "U"))
                .put(colony.path(sharing))
                .then()
                .statusCode(200)
                .body("choice", equalTo("private"))
                .body("nodes.node", hasItem("U"))
                .body("nodes.choice", hasItem("compute-only"))
                .body("grants.size()", equalTo(0));
        join();
        await(() -> toldThere().ancestry().size() == 3);
        assertThat(toldThere().toString()).doesNotContain(young);
        var page = org.demebook.web.Browsing.as(WREN).get("/populations/" + colony.code + "/sharing");
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.asString()).contains("Node U");

        allPrivate();
        colony.get(WREN, sharing).body("nodes.size()", equalTo(0));
        await(() -> toldThere().ancestry().isEmpty());
    }
}
