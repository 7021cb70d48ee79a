package org.demebook.notation;

import jakarta.persistence.AttributeConverter;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** How a value stands in a column of text, by a way to write and a way to read it; absent is null in both. */
public abstract class TextColumn<T> implements AttributeConverter<T, String> {
    private final Function<T, String> write;
    private final Function<String, T> read;

    protected TextColumn(Function<T, String> write, Function<String, T> read) {
        this.write = write;
        this.read = read;
    }

    @Override
    public @Nullable String convertToDatabaseColumn(@Nullable T value) {
        return value == null ? null : write.apply(value);
    }

    @Override
    public @Nullable T convertToEntityAttribute(@Nullable String text) {
        return text == null ? null : read.apply(text);
    }
}
