package org.demebook.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.demebook.Vectors;
import org.demebook.signing.CanonicalJson;
import org.junit.jupiter.api.Test;

/** The published vectors of statements and pages. */
class VectorsTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    @Test
    void statements() {
        var made = JsonNodeFactory.instance.objectNode();
        var entries = made.putArray("entries");
        for (var entry : new SampleStatements().all()) {
            entries.addObject()
                    .put("type", StatementForm.typeOf(entry.says()))
                    .put("restricted", Kept.isRestricted(entry))
                    .put(
                            "payload",
                            new String(CanonicalJson.write(entry.signed().payload()), StandardCharsets.UTF_8))
                    .put("compact", entry.signed().compact());
        }
        for (var published : Vectors.reproduced("statements", made).get("entries")) {
            var read = Entry.read(published.get("compact").asText());
            assertThat(CanonicalJson.write(StatementForm.write(read.says())))
                    .isEqualTo(CanonicalJson.write((com.fasterxml.jackson.databind.node.ObjectNode)
                            read.signed().payload().get("says")));
        }
    }

    @Test
    void there_is_one_of_every_kind() {
        var shown = new SampleStatements()
                .all().stream().map(entry -> entry.says().getClass()).collect(Collectors.toSet());
        assertThat(shown).isEqualTo(kinds(Statement.class));
    }

    private static Set<Class<?>> kinds(Class<?> sealed) {
        return Stream.of(sealed.getPermittedSubclasses())
                .flatMap(kind -> kind.isSealed() ? kinds(kind).stream() : Stream.of(kind))
                .collect(Collectors.toSet());
    }

    @Test
    void page() throws IOException {
        var sample = new SampleStatements();
        var liar = new Liar(SampleStatements.POPULATION, sample.harbourKey, sample.harbour);
        sample.all().stream()
                .limit(5)
                .forEach(entry -> liar.append(entry.signed().compact()));
        var bytes = PageForm.write(liar.page(2));
        var made = JsonNodeFactory.instance
                .objectNode()
                .put("what", "entries 3 to 5 of the harbour node, salts of zero bytes")
                .put("bytes", new String(bytes, StandardCharsets.UTF_8));
        made.set("read", JSON.readTree(bytes));
        var published = Vectors.reproduced("page", made).get("bytes").asText().getBytes(StandardCharsets.UTF_8);
        assertThat(PageForm.write(PageForm.read(published))).isEqualTo(published);
    }
}
