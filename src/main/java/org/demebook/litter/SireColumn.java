package org.demebook.litter;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import jakarta.persistence.Converter;
import org.demebook.notation.TextColumn;
import org.demebook.registry.Sire;

/** What was stated of a litter's sire, in the words that it has in the journal. */
@Converter
class SireColumn extends TextColumn<Sire> {
    private static final ObjectMapper JSON = JsonMapper.builder().build();

    SireColumn() {
        super(SireColumn::write, SireColumn::read);
    }

    private static String write(Sire sire) {
        try {
            return JSON.writerFor(Sire.class).writeValueAsString(sire);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Sire read(String text) {
        try {
            return JSON.readValue(text, Sire.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
