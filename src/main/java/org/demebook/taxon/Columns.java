package org.demebook.taxon;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import jakarta.persistence.Converter;
import org.demebook.notation.TextColumn;

/** How the values of this room stand in a column. */
final class Columns {
    private Columns() {}

    @Converter(autoApply = true)
    static class OfBirthMode extends TextColumn<BirthMode> {
        OfBirthMode() {
            super(BirthMode::word, BirthMode::parse);
        }
    }

    @Converter(autoApply = true)
    static class OfProfile extends TextColumn<TaxonProfile> {
        private static final ObjectMapper JSON = JsonMapper.builder().build();

        OfProfile() {
            super(OfProfile::write, OfProfile::read);
        }

        private static String write(TaxonProfile profile) {
            try {
                return JSON.writeValueAsString(profile);
            } catch (JsonProcessingException e) {
                throw new IllegalStateException(e);
            }
        }

        private static TaxonProfile read(String text) {
            try {
                return JSON.readValue(text, TaxonProfile.class);
            } catch (JsonProcessingException e) {
                throw new IllegalStateException(e);
            }
        }
    }
}
