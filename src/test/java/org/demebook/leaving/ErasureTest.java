package org.demebook.leaving;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** A keeper who leaves takes their own along, and nobody else loses anything by it. Scenario: a keeper leaves. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class ErasureTest {
    private static final String COLUMNS = """
        select table_name || ' ' || column_name || ' ' || data_type
        from information_schema.columns
        where table_schema = 'demebook'
        order by 1
        """;

    @Test
    void nothing_that_they_wrote_or_are_called_is_left_in_any_column_of_any_table() {
        var story = new LeaverStory(Colony.found());
        story.writeEverything();
        var written = Set.copyOf(story.words);
        // of the sheet that could not be read, one of two words is repeated in what was found
        var recorded = story.words.subList(0, story.words.size() - 2);
        var ofSheet = story.words.subList(story.words.size() - 2, story.words.size());
        assertThat(found(written).keySet())
                .as("it is there before")
                .containsAll(recorded)
                .containsAnyElementsOf(ofSheet);
        var pictures = ask("select count(*) from demebook.photo_content").get(0);

        story.leave().statusCode(204);

        assertThat(found(written)).isEmpty();
        assertThat(ask("select id from demebook.photo where added_by::text = ?", keeperId(story)))
                .isEmpty();
        assertThat(Integer.parseInt(
                        ask("select count(*) from demebook.photo_content").get(0)))
                .isEqualTo(Integer.parseInt(pictures) - 2);
        as(story.name).get("/api/v1/populations").then().statusCode(401);
    }

    /** The id stays in the journal, as a pseudonym: nothing leads from it to a name. */
    private static String keeperId(LeaverStory story) {
        return ask(
                        "select actor_id from demebook.journal_entry where population_id = (select population_id"
                                + " from demebook.population where code = ?) and type = 'keeper-erased'",
                        story.colony.code)
                .get(0);
    }

    /** Of the words those that stand somewhere, and where. */
    private static Map<String, List<String>> found(Collection<String> words) {
        var found = new LinkedHashMap<String, List<String>>();
        var columns = ask(COLUMNS);
        assertThat(columns).hasSizeGreaterThan(250);
        for (var column : columns) {
            var parts = column.split(" ");
            var text = parts[2].equals("bytea")
                    ? "encode(\"%s\", 'escape')".formatted(parts[1])
                    : "\"%s\"::text".formatted(parts[1]);
            var all = String.join(
                    "\n",
                    ask(
                            "select lower(%1$s) from demebook.\"%2$s\" where lower(%1$s) ~ ?".formatted(text, parts[0]),
                            String.join("|", words)));
            words.stream().filter(all::contains).forEach(word -> found.computeIfAbsent(word, one -> new ArrayList<>())
                    .add(parts[0] + "." + parts[1]));
        }
        return found;
    }

    @Test
    void every_figure_and_every_parent_stays_what_it_was_for_the_others() {
        var story = new LeaverStory(Colony.found());
        story.writeEverything();
        var ofInes = story.colony.young(INES, "male", "2025-05-01", story.young, story.sire);
        var numbers = List.of(story.dam, story.sire, story.young, story.lent, story.sold, ofInes);
        var asked = new ArrayList<String>(
                List.of("/gene-pool", "/animals/" + story.young + "/kinship/" + ofInes, "/pairings?for=" + ofInes));
        numbers.forEach(number -> asked.add("/animals/" + number + "/ancestry"));
        for (var keeper : List.of(INES, DOV, WREN)) {
            var animals = animals(story, keeper);
            assertThat(animals).containsKeys(numbers.toArray(String[]::new));
        }
        var before = answers(story, asked);
        var shown = animals(story, DOV);

        story.leave().statusCode(204);

        assertThat(answers(story, asked)).isEqualTo(before);
        assertThat(animals(story, DOV)).isEqualTo(shown);
    }

    private static Map<String, String> answers(LeaverStory story, List<String> asked) {
        var answers = new LinkedHashMap<String, String>();
        for (var question : asked) {
            for (var keeper : List.of(INES, DOV)) {
                var answer = as(keeper).get(story.colony.path(question));
                answers.put(keeper + " " + question, answer.statusCode() + " " + answer.asString());
            }
        }
        assertThat(answers.values())
                .filteredOn(answer -> answer.startsWith("200"))
                .hasSizeGreaterThan(10);
        return answers;
    }

    private static Map<String, Object> animals(LeaverStory story, String keeper) {
        var animals = new LinkedHashMap<String, Object>();
        List<Map<String, Object>> items = as(keeper)
                .get(story.colony.path("/animals?limit=200"))
                .then()
                .statusCode(200)
                .extract()
                .path("items");
        items.forEach(animal -> animals.put((String) animal.get("number"), animal));
        return animals;
    }

    @Test
    void each_animal_comes_under_a_holder_of_its_own_for_whom_nobody_acts() {
        var story = new LeaverStory(Colony.found());
        story.writeEverything();

        story.leave().statusCode(204);

        // ines was let see who holds two of them
        var holders = new HashSet<String>();
        for (var number : List.of(story.dam, story.young)) {
            holders.add(story.colony.get(INES, "/animals/" + number).extract().path("held.collection"));
        }
        assertThat(holders).hasSize(2).doesNotContainNull();
        var population = ask("select population_id from demebook.population where code = ?", story.colony.code);
        var unnamed = ask(
                "select c.id from demebook.collection c where c.population_id = ?::uuid and c.label = 'unnamed holder'",
                population.get(0));
        assertThat(unnamed)
                .containsAll(holders)
                .allMatch(id -> UUID.fromString(id).version() == 4);
        assertThat(ask(
                        "select count(*) from demebook.animal where population_id = ?::uuid group by collection_id"
                                + " having collection_id::text = any (?)",
                        population.get(0),
                        unnamed.toArray(String[]::new)))
                .allMatch("1"::equals);
        assertThat(ask(
                        "select collection_id from demebook.collection_keeper where collection_id::text = any (?)",
                        (Object) unnamed.toArray(String[]::new)))
                .isEmpty();
        // what was lent stays where it is, sold is sold
        story.colony
                .get(INES, "/animals/" + story.lent)
                .body("held.owner", not(nullValue()))
                .body("held.owner", not(equalTo(holders.iterator().next())));
        story.colony.get(INES, "/animals/" + story.sold).body("held.notes", nullValue());
    }

    @Test
    void it_is_not_done_while_somebody_waits_for_them() {
        var story = new LeaverStory(Colony.found());
        var animal = story.colony.female(story.name);
        var borrowed = story.colony.female(INES);
        story.end(story.name, story.offered(INES, borrowed, "breeding-loan", story.name), "acceptance", Map.of());
        var transfer = story.offered(story.name, animal, "sale", DOV);

        story.leave()
                .statusCode(409)
                .body("type", equalTo("/problems/leaving-in-the-way"))
                .body("detail", containsString(animal + " is offered to somebody: withdraw that first"))
                .body("detail", containsString(borrowed + " is on loan to you: give it back first"));
        story.colony.get(story.name, "/erasure").body("inTheWay.size()", equalTo(2));

        story.end(story.name, transfer, "withdrawal", Map.of());
        story.end(INES, story.offered(story.name, borrowed, "loan-return", INES), "acceptance", Map.of());
        story.colony.get(story.name, "/erasure").body("inTheWay", empty());
        story.leave().statusCode(204);
    }

    @Test
    void it_is_not_done_by_mistake_nor_by_the_last_coordinator() {
        var colony = Colony.found();
        colony.post(DOV, "/erasure", Map.of("name", INES))
                .statusCode(422)
                .body("type", equalTo("/problems/name-not-repeated"));
        colony.post(WREN, "/erasure", Map.of("name", WREN))
                .statusCode(409)
                .body("detail", containsString("make another member coordinator first"));
        as(Colony.OUTSIDER)
                .body(Map.of("name", Colony.OUTSIDER))
                .post(colony.path("/erasure"))
                .then()
                .statusCode(404);
        colony.get(DOV, "/collections").body("size()", equalTo(1));
    }

    @Test
    void what_a_household_keeps_together_stays_with_the_others() {
        var story = new LeaverStory(Colony.found());
        var shared = story.sharedWith(INES);
        var animal = animal("female", "2021");
        animal.putAll(Map.of("collection", shared, "notes", "shy", "ownReference", "tub 4"));
        var number = story.colony.register(story.name, animal);
        story.colony.get(story.name, "/erasure").body("stays", hasItem(containsString("1 collections that others")));

        story.leave().statusCode(204);

        story.colony
                .get(INES, "/animals/" + number)
                .body("held.collection", equalTo(shared))
                .body("held.notes", equalTo("shy"))
                .body("held.identifiers.value", hasItem("tub 4"));
        story.colony.get(INES, "/collections").body("label", hasItem("the two of us"));
    }

    @Test
    void who_belongs_to_another_population_keeps_the_account() {
        var story = new LeaverStory(Colony.found());
        var other = Colony.found();
        other.post(WREN, "/members", Map.of("name", story.name, "role", "member"))
                .statusCode(200);

        story.leave().statusCode(204);

        other.get(story.name, "/collections").statusCode(200);
        story.colony.get(story.name, "/collections").statusCode(404);
        story.leave().statusCode(404);
    }

    @Test
    void nothing_of_theirs_is_published_any_more_and_what_was_stays() {
        var colony = Colony.found();
        var stories = new ArrayList<LeaverStory>();
        for (int i = 0; i < 3; i++) {
            var story = new LeaverStory(colony);
            for (var sex : List.of("female", "male", "female", "male")) {
                colony.register(story.name, animal(sex, "2019-06-01"));
            }
            stories.add(story);
        }
        var released = colony.post(WREN, "/count-releases", Map.of("countedOn", "2026-01-31"))
                .statusCode(201)
                .extract()
                .asString();
        stories.get(0).leave().statusCode(204);
        assertThat(as(WREN).get(colony.path("/count-releases/2026-01-31")).asString())
                .isEqualTo(released);
        // two keepers are too few to be counted
        colony.post(WREN, "/count-releases", Map.of()).statusCode(409);
    }
}
