package org.demebook.journal;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import com.fasterxml.jackson.databind.util.TokenBuffer;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import com.fasterxml.jackson.module.paramnames.ParameterNamesModule;
import java.io.IOException;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import java.util.function.UnaryOperator;
import org.erdtman.jcs.JsonCanonicalizer;
import org.jspecify.annotations.Nullable;

/** The form in which entries are stored and, later, signed: canonical JSON of RFC 8785. */
final class CanonicalEntry {
    private final ObjectMapper json = JsonMapper.builder()
            .addModule(new JavaTimeModule())
            .addModule(new ParameterNamesModule())
            .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build()
            .setDefaultPropertyInclusion(JsonInclude.Include.NON_EMPTY);
    private final Map<String, Class<? extends Fact>> factOfType = new HashMap<>();

    /** An entry read back. */
    record Read(Entry entry, Fact fact) {}

    void know(Class<? extends Fact> fact) {
        if (factOfType.put(Fact.typeOf(fact), fact) != null) {
            throw new IllegalStateException("two facts are called " + Fact.typeOf(fact));
        }
    }

    /** @param keep keeps the words of a keeper and gives the digest that stands for them */
    byte[] write(Entry entry, Fact fact, UnaryOperator<String> keep) {
        var envelope = json.createObjectNode()
                .put("population", entry.populationId().toString())
                .put("node", entry.nodeCode())
                .put("seq", entry.seq())
                .put("at", entry.recordedAt().toString())
                .put("actor", entry.actorId().toString())
                .put("type", Fact.typeOf(fact.getClass()));
        if (fact.validFrom() != null) {
            envelope.put("validFrom", fact.validFrom());
        }
        if (fact.supersedes() != null) {
            envelope.put("supersedes", fact.supersedes());
        }
        envelope.set("fact", tree(fact, keep));
        requireNoFloats(envelope);
        try {
            return new JsonCanonicalizer(json.writeValueAsString(envelope)).getEncodedUTF8();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private JsonNode tree(Fact fact, UnaryOperator<String> keep) {
        try (var buffer = new TokenBuffer(json, false)) {
            json.writer().withAttribute(WordsForm.KEEPER, keep).writeValue(buffer, fact);
            return json.readTree(buffer.asParser());
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /** @param find gives the words of a digest; null where they were taken out */
    Read read(byte[] body, UnaryOperator<@Nullable String> find) {
        try {
            var envelope = json.readTree(body);
            var type = envelope.required("type").asText();
            var known = factOfType.get(type);
            if (known == null) {
                throw new IllegalArgumentException("no room knows facts of the type " + type);
            }
            var entry = new Entry(
                    UUID.fromString(envelope.required("population").asText()),
                    envelope.required("node").asText(),
                    envelope.required("seq").asLong(),
                    Instant.parse(envelope.required("at").asText()),
                    UUID.fromString(envelope.required("actor").asText()));
            return new Read(
                    entry,
                    json.readerFor(known).withAttribute(WordsForm.FINDER, find).readValue(envelope.required("fact")));
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("not an entry: " + e.getOriginalMessage(), e);
        } catch (IOException e) {
            throw new IllegalArgumentException("not an entry", e);
        }
    }

    /** An entry as it stands, with the words in their places. */
    JsonNode inFull(byte[] body, UnaryOperator<@Nullable String> find) {
        try {
            return inFull(json.readTree(body), find);
        } catch (IOException e) {
            throw new IllegalArgumentException("not an entry", e);
        }
    }

    private static JsonNode inFull(JsonNode node, UnaryOperator<@Nullable String> find) {
        if (node instanceof ObjectNode object) {
            if (object.size() == 1 && object.path(WordsForm.FIELD).isTextual()) {
                var words = find.apply(object.get(WordsForm.FIELD).asText());
                return words == null ? NullNode.getInstance() : TextNode.valueOf(words);
            }
            object.properties().forEach(field -> field.setValue(inFull(field.getValue(), find)));
        } else if (node instanceof ArrayNode array) {
            for (int i = 0; i < array.size(); i++) {
                array.set(i, inFull(array.get(i), find));
            }
        }
        return node;
    }

    // RFC 8785 writes numbers as ECMAScript doubles: a fraction, or an integer beyond 2^53, would not survive it
    private static void requireNoFloats(JsonNode node) {
        if (node.isFloatingPointNumber() || node.isIntegralNumber() && Math.abs(node.asLong()) > 1L << 53) {
            throw new IllegalStateException("the journal holds no number like " + node + "; write it as a string");
        }
        node.forEach(CanonicalEntry::requireNoFloats);
    }
}
