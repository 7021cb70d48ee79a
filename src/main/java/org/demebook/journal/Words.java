package org.demebook.journal;

import com.fasterxml.jackson.annotation.JacksonAnnotationsInside;
import com.fasterxml.jackson.databind.annotation.JsonDeserialize;
import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * A text of a fact that a keeper wrote in their own words. Its entry holds a salted digest of it; the words themselves stand
 * beside the journal and can be taken out for good. Once they are, the fact is read without them.
 */
@Target({ElementType.RECORD_COMPONENT, ElementType.FIELD, ElementType.METHOD, ElementType.PARAMETER})
@Retention(RetentionPolicy.RUNTIME)
@JacksonAnnotationsInside
@JsonSerialize(using = WordsForm.Writer.class)
@JsonDeserialize(using = WordsForm.Reader.class)
public @interface Words {
    /** What a text that cannot be left out reads once its words were taken out. */
    String ERASED = "(erased)";

    /** Whether the text cannot be left out: it reads {@link #ERASED} then, and is absent otherwise. */
    boolean required() default false;

    /** A part of a fact whose marked texts are only sometimes in a keeper's own words. */
    interface Sometimes {
        boolean inOwnWords();
    }
}
