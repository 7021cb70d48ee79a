package org.demebook.registry;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import jakarta.persistence.Converter;

/** How the value classes of this room stand in a column: by the words that they have in JSON. */
final class Columns {
    private Columns() {}

    @Converter(autoApply = true)
    static class OfSex extends TextColumn<Sex> {
        OfSex() {
            super(Sex::word, Sex::parse);
        }
    }

    @Converter(autoApply = true)
    static class OfOrigin extends TextColumn<Origin> {
        OfOrigin() {
            super(Origin::word, Origin::parse);
        }
    }

    @Converter(autoApply = true)
    static class OfSourceCode extends TextColumn<SourceCode> {
        OfSourceCode() {
            super(SourceCode::letter, SourceCode::parse);
        }
    }

    @Converter(autoApply = true)
    static class OfRoughDate extends TextColumn<RoughDate> {
        OfRoughDate() {
            super(RoughDate::toString, RoughDate::parse);
        }
    }

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
