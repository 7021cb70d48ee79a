package org.demebook.breeding;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import org.demebook.registry.Sire;
import org.jspecify.annotations.Nullable;

/** What was stated of a litter's sire, in the words that it has in the journal. */
@Converter
class SireColumn implements AttributeConverter<Sire, String> {
    private static final ObjectMapper JSON = JsonMapper.builder().build();

    @Override
    public @Nullable String convertToDatabaseColumn(@Nullable Sire sire) {
        try {
            return sire == null ? null : JSON.writerFor(Sire.class).writeValueAsString(sire);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public @Nullable Sire convertToEntityAttribute(@Nullable String text) {
        try {
            return text == null ? null : JSON.readValue(text, Sire.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
