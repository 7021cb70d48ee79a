package org.demebook.registry;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import org.jspecify.annotations.Nullable;

/** How the value classes of this room stand in a column: by the words that they have in JSON. */
final class Columns {
    private Columns() {}

    @Converter(autoApply = true)
    static class OfSex implements AttributeConverter<Sex, String> {
        @Override
        public @Nullable String convertToDatabaseColumn(@Nullable Sex sex) {
            return sex == null ? null : sex.word();
        }

        @Override
        public @Nullable Sex convertToEntityAttribute(@Nullable String word) {
            return word == null ? null : Sex.parse(word);
        }
    }

    @Converter(autoApply = true)
    static class OfOrigin implements AttributeConverter<Origin, String> {
        @Override
        public @Nullable String convertToDatabaseColumn(@Nullable Origin origin) {
            return origin == null ? null : origin.word();
        }

        @Override
        public @Nullable Origin convertToEntityAttribute(@Nullable String word) {
            return word == null ? null : Origin.parse(word);
        }
    }

    @Converter(autoApply = true)
    static class OfSourceCode implements AttributeConverter<SourceCode, String> {
        @Override
        public @Nullable String convertToDatabaseColumn(@Nullable SourceCode code) {
            return code == null ? null : code.letter();
        }

        @Override
        public @Nullable SourceCode convertToEntityAttribute(@Nullable String letter) {
            return letter == null ? null : SourceCode.parse(letter);
        }
    }

    @Converter(autoApply = true)
    static class OfRoughDate implements AttributeConverter<RoughDate, String> {
        @Override
        public @Nullable String convertToDatabaseColumn(@Nullable RoughDate date) {
            return date == null ? null : date.toString();
        }

        @Override
        public @Nullable RoughDate convertToEntityAttribute(@Nullable String text) {
            return text == null ? null : RoughDate.parse(text);
        }
    }

    @Converter(autoApply = true)
    static class OfBirthMode implements AttributeConverter<BirthMode, String> {
        @Override
        public @Nullable String convertToDatabaseColumn(@Nullable BirthMode mode) {
            return mode == null ? null : mode.word();
        }

        @Override
        public @Nullable BirthMode convertToEntityAttribute(@Nullable String word) {
            return word == null ? null : BirthMode.parse(word);
        }
    }

    @Converter(autoApply = true)
    static class OfProfile implements AttributeConverter<TaxonProfile, String> {
        private static final ObjectMapper JSON = JsonMapper.builder().build();

        @Override
        public @Nullable String convertToDatabaseColumn(@Nullable TaxonProfile profile) {
            try {
                return profile == null ? null : JSON.writeValueAsString(profile);
            } catch (JsonProcessingException e) {
                throw new IllegalStateException(e);
            }
        }

        @Override
        public @Nullable TaxonProfile convertToEntityAttribute(@Nullable String text) {
            try {
                return text == null ? null : JSON.readValue(text, TaxonProfile.class);
            } catch (JsonProcessingException e) {
                throw new IllegalStateException(e);
            }
        }
    }
}
