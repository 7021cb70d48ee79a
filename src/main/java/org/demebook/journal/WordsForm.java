package org.demebook.journal;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.BeanProperty;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.ContextualDeserializer;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * How {@link Words} stand in an entry: as {@code {"words": digest}}. Outside the journal, where nobody says how to keep them,
 * they are plain texts.
 */
final class WordsForm {
    /** Attribute of a writer: an operator that keeps words and gives their digest. */
    static final Object KEEPER = "demebook.words.keep";

    /** Attribute of a reader: an operator that gives the words of a digest, null where they were taken out. */
    static final Object FINDER = "demebook.words.find";

    static final String FIELD = "words";

    private WordsForm() {}

    static final class Writer extends StdSerializer<String> {
        Writer() {
            super(String.class);
        }

        @Override
        public boolean isEmpty(SerializerProvider provider, String value) {
            return value.isEmpty();
        }

        @Override
        @SuppressWarnings("unchecked")
        public void serialize(String value, JsonGenerator json, SerializerProvider provider) throws IOException {
            var keep = (UnaryOperator<String>) provider.getAttribute(KEEPER);
            var plain = json.currentValue() instanceof Words.Sometimes part && !part.inOwnWords();
            if (keep == null || plain) {
                json.writeString(value);
                return;
            }
            json.writeStartObject();
            json.writeStringField(FIELD, keep.apply(value));
            json.writeEndObject();
        }
    }

    static final class Reader extends StdDeserializer<String> implements ContextualDeserializer {
        private final boolean required;

        Reader() {
            this(false);
        }

        private Reader(boolean required) {
            super(String.class);
            this.required = required;
        }

        @Override
        public JsonDeserializer<?> createContextual(DeserializationContext context, @Nullable BeanProperty property) {
            var words = property == null ? null : property.getAnnotation(Words.class);
            return new Reader(words != null && words.required());
        }

        @Override
        @SuppressWarnings("unchecked")
        public @Nullable String deserialize(JsonParser json, DeserializationContext context) throws IOException {
            if (json.currentToken() != JsonToken.START_OBJECT) {
                return json.getValueAsString();
            }
            String found = null;
            while (json.nextToken() != JsonToken.END_OBJECT) {
                var field = json.currentName();
                json.nextToken();
                if (!FIELD.equals(field)) {
                    throw new IllegalArgumentException("not words: " + field);
                }
                var find = (UnaryOperator<String>) context.getAttribute(FINDER);
                found = find == null ? null : find.apply(json.getText());
            }
            return found == null && required ? Words.ERASED : found;
        }
    }
}
