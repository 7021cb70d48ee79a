package org.demebook.crossing;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import org.demebook.protocol.AnimalId;
import org.junit.jupiter.api.Test;

/** Held against docs/federation/hand-over.md, "The record". */
class HandedRecordTest {
    private static final String NODE = "kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k";
    private final AnimalId animal = new AnimalId(new UUID(4, 2), NODE);
    private final HandedRecord record = Handed.to("ines", "MC", "U", 103, animal);

    @Test
    void what_is_written_is_read_back_and_written_the_same() {
        assertThat(HandedRecord.parse(HandedRecord.text(record.json()))).isEqualTo(record);
    }

    @Test
    void what_is_not_known_yet_is_passed_over() {
        assertThat(HandedRecord.tryRead(record.json().put("tattoo", "left"))).contains(record);
    }

    @Test
    void what_is_needed_cannot_be_left_out() {
        for (var name : List.of("addressee", "kind", "number", "sex", "origin")) {
            var json = record.json();
            json.remove(name);
            assertThat(HandedRecord.tryRead(json)).as(name).isEmpty();
        }
        assertThat(HandedRecord.tryRead(null)).isEmpty();
    }

    @Test
    void whatever_a_foreign_node_sends_is_read_or_is_no_record_and_never_anything_else() {
        var random = new Random(26);
        for (int i = 0; i < 20_000; i++) {
            var json = record.json();
            for (int change = 0; change <= random.nextInt(3); change++) {
                spoil(json, random);
            }
            HandedRecord.tryRead(json).ifPresent(read -> {
                assertThat(Forebears.of(read)).hasSizeLessThanOrEqualTo(HandedRecord.MOST_FOREBEARS);
                assertThat(HandedRecord.parse(HandedRecord.text(read.json()))).isEqualTo(read);
            });
        }
    }

    private static void spoil(ObjectNode json, Random random) {
        var names = new ArrayList<String>();
        json.fieldNames().forEachRemaining(names::add);
        if (names.isEmpty()) {
            return; // all were taken away before
        }
        var name = names.get(random.nextInt(names.size()));
        var nodes = JsonNodeFactory.instance;
        switch (random.nextInt(8)) {
            case 0 -> json.remove(name);
            case 1 -> json.set(name, nodes.numberNode(random.nextLong() >> 12));
            case 2 -> json.set(name, nodes.textNode("x".repeat(random.nextInt(3_000))));
            case 3 -> json.set(name, nodes.arrayNode().add(nodes.objectNode()).add(1));
            case 4 -> json.set(name, nodes.objectNode().put("locality", 1));
            case 5 -> json.put(name, "../2026-02-31");
            case 6 -> json.put(name, "2019/2021");
            default -> {
                if (json.get("forebears") != null
                        && json.get("forebears").isArray()
                        && json.get("forebears").size() > 0
                        && json.get("forebears").get(0) instanceof ObjectNode forebear) {
                    spoil(forebear, random);
                } else {
                    json.putNull(name);
                }
            }
        }
    }

    @Test
    void a_record_that_is_knotted_ends() {
        var json = record.json();
        var itself = (ObjectNode) json.get("forebears").get(0);
        itself.put("dam", animal.toString());
        itself.putArray("sires").addObject().put("sire", animal.toString()).put("share", 1_000_000);
        var told = Forebears.of(HandedRecord.read(json));
        assertThat(told).hasSize(2 + 4 + 8 + 16 + 32);
        assertThat(told.get(0).line()).isEqualTo("dam");
        assertThat(told.get(told.size() - 1).line()).isEqualTo("sire-sire-sire-sire-sire");
    }
}
